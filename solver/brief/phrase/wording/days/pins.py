"""Lifts that are said of a weekday, taken out of a sentence as pins: squat on mon, bench press on thu."""

from __future__ import annotations

import re
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

_SETS: Final = r"(?:,? (?:for )?(?P<sets>\d+) (?:working )?sets)?"
_OF_A_DAY: Final = (
    re.compile(rf"{LEAD}(?P<lifts>[a-z' -]+?) (?:(?:on|every|each|for) )*(?P<days>{SOME_DAYS}){_SETS}"),
    re.compile(
        rf"{LEAD}(?P<days>{SOME_DAYS})(?: (?:is|for|starts? with|begins? with|has|should have))+ (?P<lifts>[a-z' -]+?)(?: day)?{_SETS}"
    ),
)
_EVERY_DAY: Final = re.compile(
    rf"{LEAD}(?P<lifts>[a-z' -]+?) on (?P<which>both|all|every|each)(?:(?: of)?(?: the| my)? (?:days?|sessions?|workouts?))"
)
_SETS_ALONE: Final = re.compile(r"(?P<sets>\d+) sets")
_COUNTED: Final = re.compile(r"\b(\d) (?:days\b|x )|\b(\d)x ?\d")


def with_pins(text: str, lexicon: Lexicon) -> tuple[str, list[str]]:
    """The text without the lifts that it says of weekdays, and a clause for each of them.

    Where no other days are named or counted, or as many are counted as have a lift, the days of the lifts are the days.
    """
    pins: list[str] = []
    days: list[str] = []
    left: list[str] = []
    for part in (part for clause in clauses_of(text) for part in _parts(clause, lexicon)):
        found = _pinned(part, lexicon)
        if every := _EVERY_DAY.fullmatch(part.strip()):
            whole = _lifts(every["lifts"], lexicon)
            days_meant = "both days" if every["which"] == "both" else "every day"
            pins += [f"pin {lift} on {days_meant}" for lift in whole]
            left.append("" if whole else part)
            continue
        if found:
            named, lifts, sets = found
            pins += [f"pin {lift} on {day}{f' {sets} sets' if sets else ''}" for lift in lifts for day in named]
            days += named
        elif (alone := _SETS_ALONE.fullmatch(part)) and left and left[-1] == "" and " sets" not in pins[-1]:
            pins[-1] = f"{pins[-1]} {alone['sets']} sets"
        else:
            left.append(part)
            continue
        if found:
            left.append("")
    if not pins:
        return text, []
    rest = ", ".join(part for part in left if part)
    if days and not weekdays_in(rest):
        counts = [int(one or other) for one, other in _COUNTED.findall(rest)]
        named = list(dict.fromkeys(sorted(days, key=WEEKDAYS.index)))
        if not counts:
            rest = f"{' '.join(named)}, {rest}"
    return rest, pins


def _parts(clause: str, lexicon: Lexicon) -> list[str]:
    """The clause itself where all of it says lifts of weekdays, else its parts."""
    return [clause] if _pinned(clause, lexicon) else joined_parts(clause, lexicon)


def _pinned(part: str, lexicon: Lexicon) -> tuple[list[str], tuple[str, ...], str] | None:
    """The days, the lifts and the sets of a clause that says a lift of a day; None for any other."""
    for pattern in _OF_A_DAY:
        found = pattern.fullmatch(part.strip())
        if not found:
            continue
        if lifts := _lifts(found["lifts"], lexicon):
            return weekdays_in(found["days"]), lifts, found["sets"] or ""
    return None


def _lifts(text: str, lexicon: Lexicon) -> tuple[str, ...]:
    """The exercises of a text, each called in full; none where one of its names is no exercise."""
    lifts = tuple(_whole(name) for name in names_of("l", {"press": "overhead press"}.get(text, text), lexicon))
    return lifts if all(lexicon.resolve(lift, ("exercise",)) for lift in lifts) else ()


def _whole(lift: str) -> str:
    """A lift called by less than its name, as it is called in full."""
    return {"bench": "bench press"}.get(lift, lift)
