"""Days said in one place of a sentence and minutes in another, put together: M/W/F ... 45 min -> mon wed fri 45 min."""

from __future__ import annotations

import re
from typing import Final

from setwright.solver.brief.defaults import WEEKDAYS

TAKEN: Final = "\N{SECTION SIGN}"
"""Stands where days or minutes were taken out: words beside it may be what they are said of."""
_DAY: Final = "|".join(WEEKDAYS)
_SET: Final = rf"(?:(?:{_DAY})(?:-(?:{_DAY}))?)"
_BEFORE: Final = r"(?:(?:on|every|at|the|and|,)\s+)*"
_NAMED: Final = re.compile(rf"{_BEFORE}\b{_SET}(?:\s+{_SET})*\b")
_COUNTED: Final = re.compile(r"\b(\d) (?:x |days\b)")
_BEHIND: Final = re.compile(
    rf"(?<!(?:{_DAY}) )\b(upper|lower|push|pull|legs?|arms|full body)(?: body)?(?: days?)?,? (?:on )?({_SET}(?:\s+{_SET})*)\b"
)
_MINUTES: Final = re.compile(r"\b(\d+) min\b")
_TOTAL: Final = re.compile(r"\b(\d+) min (?:weekly|(?:a|per|each) week)(?: in total|(?=,? (?:spread |over |\d days)))")
_BARE: Final = re.compile(r"(?:(?<=[a-z] )|(?<=, ))(\d\d\d?)(?=\s*(?:[,.;]|$))")
_ONLY: Final = re.compile(
    r",? (upper|lower|arms|push|pull|full body)(?: body)? only\b|,? (full body|push pull legs upper lower|upper lower push pull legs|upper lower full body|push pull legs|upper lower)(?=[,.;]|$)"
)
_FIRST: Final = re.compile(rf"(?:\d (?:days )?x|{_SET}(?: {_SET})*) ?\d+(?: min)?")
THEMES: Final = r"(?:upper|lower|push|pull|legs?|arms|full body|full-body)"
_THEMED: Final = re.compile(rf"\b(?:{_SET}) {THEMES}\b|\b{THEMES}(?: body)?(?: day)?s?,? (?:on )?{_SET}\b")


def joined(text: str) -> str:
    """The text with its only days and its only minutes side by side, at the front; unchanged where there are several.

    Minutes a week are parted evenly among the days that are counted, where they come out whole.
    """
    if _THEMED.search(text):
        return _themes_joined(text)
    if total := _TOTAL.search(text):
        counted = _COUNTED.findall(text)
        if len(counted) != 1 or int(total[1]) % int(counted[0]):
            return text
        text = f"{text[: total.start()]} {int(total[1]) // int(counted[0])} min {text[total.end() :]}"
    minutes = list(_MINUTES.finditer(text))
    named = list(_NAMED.finditer(text))
    counted = [found for found in _COUNTED.finditer(text) if not found[0].endswith("x ")]
    if not minutes and len(named) == 1 and not counted:
        minutes = list(_BARE.finditer(text))[:1]
    if len(minutes) != 1 or len(named) > 1 or len(counted) > 1 or not (named or counted):
        return text
    if named and counted and not _agree(named[0][0], counted[0][1]):
        return text
    spans = sorted([found.span() for found in (*minutes, *named, *counted)], reverse=True)
    for start, end in spans:
        text = f"{text[:start]} {TAKEN}, {TAKEN} {text[end:]}"
    if named:
        days = " ".join(re.findall(_SET, named[0][0]))
        return f"{days} {minutes[0][1]} min, {text}"
    return f"{counted[0][1]} days x {minutes[0][1]} min, {text}"


def _themes_joined(text: str) -> str:
    """push on mon, pull on thu, 60 min -> mon push 60 min, thu pull 60 min; unchanged where minutes are said twice."""
    turned = _BEHIND.sub(lambda found: f"{' '.join(re.findall(_SET, found[2]))} {found[1]}", text)
    minutes = list(_MINUTES.finditer(turned))
    if len(minutes) != 1 or re.search(rf"\b{_SET} \d", turned):
        return text
    start, end = minutes[0].span()
    without = f"{turned[:start]} {TAKEN}, {TAKEN} {turned[end:]}"
    return re.sub(rf"(\b{_SET}(?: {_SET})* {THEMES}\b)", rf"\1 {minutes[0][1]} min", without)


def themed(text: str) -> str:
    """The text with a theme that is said of all its days behind their minutes: 3 days x 40 min, upper body only."""
    found = _ONLY.search(text)
    if not found:
        return text
    rest = f"{text[: found.start()]}{text[found.end() :]}"
    days = _FIRST.search(rest)
    if not days:
        return text
    return f"{rest[: days.end()]} {found[1] or found[2]}{rest[days.end() :]}".strip(" ,")


def _agree(named: str, count: str) -> bool:
    """Whether so many weekdays are named as are counted."""
    days = 0
    for first, last in re.findall(rf"({_DAY})(?:-({_DAY}))?", named):
        days += (WEEKDAYS.index(last or first) - WEEKDAYS.index(first)) % 7 + 1
    return days == int(count)
