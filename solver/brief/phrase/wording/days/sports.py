"""Other sport and its weekdays taken out of a sentence, so that they are not read as days to lift."""

from __future__ import annotations

import re
from typing import Final

from setwright.solver.brief.defaults import WEEKDAYS

_DAY: Final = "|".join(WEEKDAYS)
_DAYS: Final = rf"(?:{_DAY})(?:-(?:{_DAY}))?(?:(?:(?: and|, and)? |, (?=(?:{_DAY}|and|,|-| )+(?:[,.;]|$|so\b)))(?:{_DAY})(?:-(?:{_DAY}))?)*"
_NAMES: Final = (
    r"5-a-side|football|soccer|rugby|tennis|basketball|hockey|judo|climbing|climb|swimming|swims?|running|runs?|volleyball|"
    r"rowing(?: club)?|rows on the water|cycling|(?:long )?bike rides?|dance class|dancing|sprints?|handball|boxing|"
    r"hik(?:e|es|ing)|ski(?:ing)?|skating|squash|badminton|netball|lacrosse|cricket|karate|wrestling|kickboxing|padel|triathlon|martial arts|manual labou?r|heavy manual labou?r|(?:club|team) (?:training|practice)|practice|match|games?|matches"
)
_SPORT: Final = re.compile(
    rf"\b(?:(?:because|since|as) )?(?:i |he |she |we |with )?({_NAMES})(?: player,?| practice| training| is| are)?(?: on| every| at)* ({_DAYS})(?:,? so\b)?"
)


def without_sport(text: str) -> tuple[str, list[str]]:
    """The text without its sports, and a clause for each weekday of one."""
    clauses: list[str] = []

    def keep(found: re.Match[str]) -> str:
        name = re.sub(r"[^a-z ]", " ", found[1]).strip() or "sport"
        clauses.extend(f"sport {name.split(' on ')[0].strip()} on {day}" for day in _each(found[2]))
        return ","

    return _SPORT.sub(keep, text), clauses


_HEAVY_LEGS: Final = re.compile(
    rf"(?:^|(?<=[,.;] ))(?:so |and |but |please )*(?:no|not any|nothing) heavy (?:legs?|leg work|lower body)(?: work)? (?:on )?({_DAY})(?: please)?(?=[,.;]|$)"
)


def without_heavy_legs(text: str, sports: list[str]) -> tuple[str, list[str]]:
    """The text without `no heavy legs on wed` where sport on that day or the next rules them out already, and these."""
    found: list[str] = []

    def drop(match: re.Match[str]) -> str:
        near = (match[1], WEEKDAYS[(WEEKDAYS.index(match[1]) + 1) % 7])
        if not any(sport.endswith(f" on {day}") for sport in sports for day in near):
            return match[0]
        found.append(match[0].strip(" ,"))
        return ","

    return _HEAVY_LEGS.sub(drop, text), found


def _each(days: str) -> list[str]:
    """mon-wed, fri as mon tue wed fri."""
    found: list[str] = []
    for first, last in re.findall(rf"({_DAY})(?:-({_DAY}))?", days):
        start, end = WEEKDAYS.index(first), WEEKDAYS.index(last or first)
        found += [WEEKDAYS[(start + step) % 7] for step in range((end - start) % 7 + 1)]
    return found
