"""The days of one length in a sentence, with their theme and place: `gym on mon and wed, 60 min`."""

from __future__ import annotations

import re
from dataclasses import dataclass, field
from typing import Final

from setwright.solver.brief.defaults import WEEKDAYS
from setwright.solver.brief.phrase.lexicon import Lexicon
from setwright.solver.brief.phrase.wording.patterns.asides import is_empty
from setwright.solver.brief.phrase.wording.patterns.places import place_said

DAY: Final = "|".join(WEEKDAYS)
_SET: Final = rf"(?:{DAY})(?:-(?:{DAY}))?"
DAYS: Final = re.compile(rf"\b{_SET}(?:(?: |, and | and )(?:on )?{_SET})*\b")
_MINUTES: Final = re.compile(r"\b(\d\d\d?)(?: min\b|(?= *$)|(?= (?!kg|lbs?|kilos?|sets?|reps?|years?)[a-z]))")
_THEME: Final = re.compile(r"\b(upper|lower|push|pull|legs?|arms|full body|full-body)(?: body)?(?: days?)?\b")
COUNT: Final = re.compile(r"\b(\d) days\b")
OTHERS: Final = re.compile(
    r"\b(?:on )?(?:the (?:others?|rest|other \d(?: days)?|other days?|remaining \d?)|otherwise|all other days|other days)\b"
)
_LINKS: Final = re.compile(
    r"\b(?:on|at|for|every|only|just|each|is|are|as|a|an|long|short|longer|shorter|sessions?|ones?|workouts?|instead|plus|have|got|can|do|1)\b"
)
_HOURS: Final = re.compile(r"\b\d\d? (?:to|till|until) \d\d?\b(?! min)")
"""Numbers that may be hours of the clock."""
_HOME: Final = re.compile(
    r"^(?:(?:on|at|in|the|from) )*home(?: with| using)?\b|\b(?:at|in) home$|^(?:on|for|at|in|with) |\bmembership$"
)


@dataclass
class DayGroup:
    """The days of one length, with what is said of them; `rest` are words that the day clauses do not take."""

    days: list[str]
    minutes: int | None = None
    theme: str = ""
    place: str = ""
    words: str = ""
    others: bool = False
    home: bool = False
    rest: list[str] = field(default_factory=list)

    def clause(self) -> str:
        """The group in the words of the day clauses."""
        words = [self.words or " ".join(self.days), self.theme, f"{self.minutes} min", self.place]
        return " ".join(word for word in words if word)


def group_of(segment: str, lexicon: Lexicon) -> DayGroup | None:
    """The group of one segment; None where it names days twice or holds words that are not of its days."""
    found = list(DAYS.finditer(segment))
    if len(found) > 1 or _HOURS.search(segment):
        return None
    group = DayGroup(_each(found[0][0]), words=" ".join(re.findall(_SET, found[0][0]))) if found else DayGroup([])
    rest = DAYS.sub(" ", segment)
    group.others = not found and OTHERS.search(rest) is not None
    rest = OTHERS.sub(" ", rest) if group.others else rest
    if count := COUNT.search(rest):
        group.rest.append(count[1])
        rest = COUNT.sub(" ", rest)
    for pattern, name in ((_MINUTES, "minutes"), (_THEME, "theme")):
        said = list(pattern.finditer(" ".join(rest.split())))
        if len(said) > 1:
            return None
        if said:
            setattr(group, name, int(said[0][1]) if name == "minutes" else said[0][1].replace("-", " "))
            rest = pattern.sub(" ", " ".join(rest.split()))
    group.theme = "legs" if group.theme == "leg" else group.theme
    left = " ".join(rest.split())
    if is_empty(_LINKS.sub(" ", left)):
        return group
    left = re.sub(r"^(?:(?:and|with|use|using) )+|(?: (?:on|for|at|in|with))+$", "", left)
    place = place_said(re.sub(r"^(?:(?:on|at|for|in|the) )+(?=home\b)|\bat home$", "", left).strip(), lexicon)
    at_home = _HOME.sub("", left).strip()
    if place is None and not at_home:
        group.home = True
        return group
    place = place or place_said(at_home, lexicon)
    if place is None or place[1] or place[0].startswith("without"):
        return None
    group.place = place[0]
    return group


def _each(days: str) -> list[str]:
    """The weekdays of a set, a range as all its days."""
    found: list[str] = []
    for first, last in re.findall(rf"({DAY})(?:-({DAY}))?", days):
        start, end = WEEKDAYS.index(first), WEEKDAYS.index(last or first)
        found += [WEEKDAYS[(start + step) % 7] for step in range((end - start) % 7 + 1)]
    return found


def settled(groups: list[DayGroup], others: list[str]) -> list[DayGroup] | None:
    """The groups with all that is left open filled in; None where days overlap or minutes are missing."""
    counts = [int(count) for group in groups for count in group.rest if count.isdigit()]
    groups = [group for group in groups if group.days or group.others]
    whole = next((group for group in groups if group.days and group.minutes is None), None)
    own = [group for group in groups if group.days and group is not whole]
    rest = next((group for group in groups if group.others), None)
    if rest and whole:
        rest.days = [day for day in whole.days if all(day not in group.days for group in own)]
        groups = [rest, *own]
    elif (
        whole
        and all(set(group.days) <= set(whole.days) for group in own)
        and {day for group in own for day in group.days} == set(whole.days)
    ):
        groups = own
    days = [day for group in groups for day in group.days]
    if len(days) != len(set(days)) or any(group.minutes is None or not group.days for group in groups):
        return None
    if any(count != len(days) for count in counts) or len(groups) < 2:
        return None
    if any(group.home and not group.place for group in groups):
        return None
    placed = [group for group in groups if group.place]
    if placed and len(placed) < len(groups):
        if any(not any(part in others for part in group.rest) for group in placed):
            return None
        for group in placed:
            group.place = ""
    elif placed:
        for group in groups:
            others[:] = [other for other in others if other not in group.rest]
    return groups
