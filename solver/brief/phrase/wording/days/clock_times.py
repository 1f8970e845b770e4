"""Hours of the clock: from one to another they are a day's minutes, alone they say nothing of a week."""

from __future__ import annotations

import re
from typing import Final

from setwright.solver.brief.defaults import LIMITS

_HALF: Final = r"(?:am|pm|a\.m\.?|p\.m\.?)"
_HOUR: Final = rf"(?P<{{0}}>[01]?\d|2[0-4])(?:[:.](?P<{{0}}m>[0-5]\d))?(?: ?(?P<{{0}}h>{_HALF}))?(?: ?o'clock)?"
_PART: Final = r"(?: ?(?:in the (?:early )?(?:mornings?|evenings?|afternoons?)|at night))?"
_NO_UNIT: Final = r"(?!\d|[.:]\d|-\d| ?(?:sets?|reps?|x\b|kg|lbs?|kilos?|pounds|days?|sessions?|times|min|minutes?|weeks?|years?|h\b|hours?|exercises?|%))"
_SPAN: Final = re.compile(
    rf"(?P<lead>\b(?:from|between|at) )?(?<![\d.:])\b{_HOUR.format('a')} ?(?:-|to|and|till|until) ?{_HOUR.format('b')}{_PART}{_NO_UNIT}"
)
_PREPOSITION: Final = r"(?:(?:starting|start|starts|beginning|sharp|usually|always|only) )?(?:at|around|about|from|after|before|by|till|until) "
_ALONE: Final = re.compile(
    rf"\b(?:{_PREPOSITION})?(?<![\d.:-])(?:\d{{1,2}}(?:[:.][0-5]\d)? ?{_HALF}(?![a-z])|\d{{1,2}}:[0-5]\d|\d{{1,2}} ?o'clock|"
    rf"(?<=at )\d{{1,2}}(?= in the (?:morning|evening)))(?: sharp)?{_PART}{_NO_UNIT}"
)
_BEFORE_A_BARE_SPAN: Final = re.compile(
    r"(?:^|[,.;]|\b(?:mondays?|tuesdays?|wednesdays?|thursdays?|fridays?|saturdays?|sundays?|mon|tues?|wed|thu|thurs?|fri|sat|sun|"
    r"weekdays?|weekends?|mornings?|evenings?|afternoons?|lunch(?:time)?|week|free|available|train|lift|gym|day|daily|days))\s*$"
)
_TAKEN_UP: Final = re.compile(
    r"(?<!after )(?<!before )\b(?:works?|working|job|shifts?|school|class(?:es)?|uni|sleeps?|naps?|busy|open|opens|closed|closes|unavailable|"
    r"not|never|no|can't|cannot|don't|except|meetings?|booked|taken|kids?)\b"
)
"""Words of hours in which nobody trains."""
_LONGEST: Final = 120
"""Minutes between two hours that are a session; more may be the time in which somebody is free."""


def without_clock_times(text: str) -> tuple[str, list[str]]:
    """The text with the minutes between two hours in their place, and the hours that were passed over; hours that may
    be something else stay as they are."""
    over: list[str] = []

    def drop(found: re.Match[str]) -> str:
        over.append(" ".join(found[0].split()))
        return " "

    return _ALONE.sub(drop, _SPAN.sub(_minutes, text)), over


def _minutes(found: re.Match[str]) -> str:
    """from 6 to 7 am as 60 min; as it is written where no hours are said, or more than a session lasts."""
    clear = found["am"] or found["bm"] or found["ah"] or found["bh"] or "o'clock" in found[0] or " in the " in found[0]
    if not clear and not (found["lead"] and _BEFORE_A_BARE_SPAN.search(found.string[: found.start()])):
        return found[0]
    if (not clear and found["lead"] == "at ") or _TAKEN_UP.search(_clause_before(found)):
        return found[0]
    start, end = _of_day(found, "a"), _of_day(found, "b")
    if found["bh"] or found["ah"]:
        start, end = _on_one_half(found, start, end)
    whole = (end - start) % (12 * 60 if end < start else 24 * 60)
    if not LIMITS["minutes"][0] <= whole <= _LONGEST:
        return found[0]
    return f" {whole} min "


def _clause_before(found: re.Match[str]) -> str:
    """What stands in the same clause before the hours."""
    return re.split(r"[,;.]\s", found.string[: found.start()])[-1]


def _of_day(found: re.Match[str], name: str) -> int:
    """One of the two hours in minutes after midnight, as it is written."""
    return 60 * int(found[name]) + int(found[f"{name}m"] or 0)


def _on_one_half(found: re.Match[str], start: int, end: int) -> tuple[int, int]:
    """Both hours after midnight by am and pm; an hour without either is of the other's half, where it comes before."""
    halves = [(found[f"{name}h"] or "")[:1] for name in "ab"]
    first, last = (
        hour % (12 * 60) + (12 * 60 if half == "p" else 0) if half else None
        for hour, half in zip((start, end), halves, strict=True)
    )
    if last is None and first is not None:
        last = end % (12 * 60) + (12 * 60 if first >= 12 * 60 else 0)
        last += 12 * 60 if last < first else 0
    if first is None and last is not None:
        first = start % (12 * 60) + (12 * 60 if last >= 12 * 60 else 0)
        first -= 12 * 60 if first > last else 0
    return first or 0, last or 0
