"""Days that differ in length, theme or place, put into one clause a group: gym on mon 60 min, home on wed 30 min."""

from __future__ import annotations

import re
from typing import Final

from setwright.solver.brief.phrase.lexicon import Lexicon
from setwright.solver.brief.phrase.wording.days.day_groups import COUNT, DAY, DAYS, OTHERS, DayGroup, group_of, settled
from setwright.solver.brief.phrase.wording.patterns.places import place_said

_SEGMENTS: Final = re.compile(
    rf"\s*[,;.]\s+|\s+(?:and|plus|but)\s+(?=(?:on |at |the |only |just )*(?:(?:{DAY})\b|\d\d\d? (?:min|on)\b|other))"
)


def scheduled(text: str, lexicon: Lexicon) -> str:
    """The text with its groups of named days at the front, a clause each; unchanged where it has fewer than two groups,
    or where one of them cannot be told for sure."""
    parted = DAYS.sub(_parted, text)
    if len(DAYS.findall(parted)) < 2:
        return text
    groups: list[DayGroup] = []
    others: list[str] = []
    for segment in (part.strip() for part in _SEGMENTS.split(parted) if part.strip()):
        kind = _sort_of(segment)
        if kind == "words" and groups and groups[-1].minutes is None and re.fullmatch(r"\d\d\d?", segment):
            groups[-1].minutes = int(segment)
            continue
        if kind == "words":
            others.append(segment)
            _say_place(groups, others, segment, lexicon)
            continue
        group = group_of(segment, lexicon)
        if group is None:
            return text
        if not group.days and not group.others:
            if not _add_minutes(groups, group):
                return text
            continue
        groups.append(group)
    whole = settled(groups, others)
    return text if whole is None else ", ".join([*(group.clause() for group in whole), *others])


def _parted(days: re.Match[str]) -> str:
    """sat sun sat as sat sun, sat: a day said again begins a group of its own."""
    seen: set[str] = set()
    words: list[str] = []
    for word in days[0].split():
        again = word in seen
        words.append(f", {word}" if again else word)
        seen = {word} if again else {*seen, word}
    return " ".join(words).replace(" ,", ",")


def _sort_of(segment: str) -> str:
    """Whether a segment speaks of days or minutes, or has other words only."""
    speaks = (
        DAYS.search(segment) or re.search(r"\b\d+ min\b", segment) or COUNT.search(segment) or OTHERS.search(segment)
    )
    return "days" if speaks else "words"


def _add_minutes(groups: list[DayGroup], said: DayGroup) -> bool:
    """Minutes without days: those of the last group if it has none, or of all that have none."""
    open_groups = [group for group in groups if group.minutes is None]
    if said.minutes is None:
        if said.rest and not groups:
            groups.append(said)
            return True
        return False
    if not open_groups or said.theme:
        return False
    for group in open_groups if len(open_groups) == len(groups) else open_groups[-1:]:
        group.minutes = said.minutes
        group.place = group.place or said.place
    return True


def _say_place(groups: list[DayGroup], others: list[str], segment: str, lexicon: Lexicon) -> None:
    """A place between two groups is that of the first: mon-fri 15 min, no equipment; sat 60 min in the gym."""
    place = place_said(segment, lexicon) if groups and groups[-1].days and not groups[-1].place else None
    if place and not place[1] and not place[0].startswith("without"):
        groups[-1].place, groups[-1].rest = place[0], [*groups[-1].rest, segment]
