"""Muscles that are said of weekdays, taken out of a sentence: chest on mon, legs only on fri, no arms on wed."""

from __future__ import annotations

import re
from dataclasses import dataclass, field
from typing import Final

from setwright.solver.brief.defaults import WEEKDAYS
from setwright.solver.brief.phrase.lexicon import Lexicon
from setwright.solver.brief.phrase.wording.days.weekday_parts import (
    LEAD,
    SOME_DAYS,
    clauses_of,
    joined_parts,
    weekdays_in,
)
from setwright.solver.brief.phrase.wording.patterns.names import names_of

_ON: Final = rf"(?:(?:on|every|each|for) )*(?P<days>{SOME_DAYS})"
_TAIL: Final = r"(?:,? (?:for |x )?(?P<minutes>\d\d\d? min))?"
_NOT: Final = r"(?:no|not|skip|rest|without|leave out|(?:do not|don't|never) (?:train|want|do|hit|work))(?: (?:any|direct|my|the))*"
_WORK: Final = r"(?: (?:work|day|exercises|stuff|training))?"
_ONLY: Final = (
    re.compile(rf"{LEAD}(?P<names>[a-z' -]+?){_WORK} (?:only|just) {_ON}"),
    re.compile(rf"{LEAD}(?P<names>[a-z' -]+?){_WORK} {_ON} only"),
)
_RESTED: Final = (
    re.compile(rf"(?:(?:and|but|please|i|so) )*{_NOT} (?P<names>[a-z' -]+?){_WORK} {_ON}"),
    re.compile(rf"(?:(?:and|but|on) )*(?P<days>{SOME_DAYS}) (?:is )?(?:no|without) (?P<names>[a-z' -]+?){_WORK}"),
)
_TRAINED: Final = (
    re.compile(rf"{LEAD}(?P<names>[a-z' &/-]+?){_WORK} {_ON}{_TAIL}"),
    re.compile(
        rf"{LEAD}(?P<days>{SOME_DAYS})(?: (?:is|for|starts? with|begins? with|has|should have|to be))* "
        rf"(?P<names>[a-z' &/-]+?){_WORK}{_TAIL}"
    ),
)
_KINDS: Final = (("train {} only", _ONLY), ("rest {}", _RESTED), ("train {}", _TRAINED))
_THEMES: Final = frozenset(
    [
        "legs",
        "leg",
        "arms",
        "upper",
        "lower",
        "upper body",
        "lower body",
        "push",
        "pull",
        "full body",
        "full-body",
        "whole body",
    ]
)
"""What is the theme of a day where it stands beside a weekday by itself."""
_EITHER: Final = re.compile(r"\bor\b")
_RETURN: Final = re.compile(r"train back on [a-z]+")
"""Back on Monday may be who returns then; beside another muscle's day it is the back."""
_COUNTED: Final = re.compile(r"\b\d (?:days\b|x )|\b\dx ?\d")


@dataclass
class _Found:
    clauses: list[str] = field(default_factory=list)
    days: list[str] = field(default_factory=list)
    themes: list[str] = field(default_factory=list)
    """fri legs: a day with its theme beside days that have muscles."""


def with_muscle_days(text: str, lexicon: Lexicon) -> tuple[str, list[str]]:
    """The text without what it says of the muscles of weekdays, and a clause for each of them.

    Where no other days are named or counted, the days of the muscles are the days.
    """
    found, left = _Found(), []
    for clause in clauses_of(text):
        whole = _taken(clause, found, lexicon)
        if whole is not None:
            left.append(whole)
            continue
        for part in joined_parts(clause, lexicon):
            rest = _taken(part, found, lexicon)
            left.append(part if rest is None else rest)
    if not found.clauses or all(_RETURN.fullmatch(clause) for clause in found.clauses):
        return text, []
    rest = ", ".join(part for part in left if part)
    if not weekdays_in(rest) and not _COUNTED.search(rest):
        named = sorted({*found.days} - {theme.split()[0] for theme in found.themes}, key=WEEKDAYS.index)
        rest = ", ".join([*found.themes, " ".join(named), rest])
    elif found.themes:
        of_groups = [theme for theme in found.themes if theme.endswith((" legs", " arms"))]
        found.clauses += [f"train {theme.split()[1]} on {theme.split()[0]}" for theme in of_groups]
        rest = ", ".join([*(theme for theme in found.themes if theme not in of_groups), rest])
    return rest, found.clauses


def _taken(part: str, found: _Found, lexicon: Lexicon) -> str | None:
    """What is left of a part that says muscles of weekdays, which are kept; None where it says none."""
    for words, patterns in _KINDS:
        for pattern in patterns:
            if not (said := pattern.fullmatch(part.strip())):
                continue
            days, names = weekdays_in(said["days"]), said["names"].strip()
            if names in _THEMES and words == "train {}":
                return _themed(names, days, said["minutes"], found)
            muscles = names_of("m", names.replace("&", "and").replace("/", " and "), lexicon)
            either = _EITHER.search(names) is not None and words != "rest {}"
            if not muscles or either or names in _THEMES - {"legs", "leg", "arms"}:
                continue
            found.clauses.append(f"{words.format(' and '.join(muscles))} on {' and '.join(days)}")
            found.days += [] if words == "rest {}" else days
            minutes = said.groupdict().get("minutes")
            return f"{' '.join(days)} {minutes}" if minutes else ""
    return None


def _themed(theme: str, days: list[str], minutes: str | None, found: _Found) -> str | None:
    """An empty text for days with a theme, which are kept; None where their own minutes stand with them."""
    if minutes or len(days) != 1:
        return None
    found.themes.append(f"{days[0]} {'legs' if theme == 'leg' else theme}")
    found.days += days
    return ""
