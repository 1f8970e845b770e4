"""Counts of days that are parted: 4 days, 2 of 30 min and 2 of 50; 4 days, 2 upper and 2 lower."""

from __future__ import annotations

import re
from typing import Final

_SORT: Final = r"(?:(?:days|ones?|long|short|longer|shorter|of them|sessions?|1)\s+)*"
_OF: Final = r"(?:(?:of|at|x|are|is|for|with)\s+)*"
_LENGTHS: Final = re.compile(
    rf"(?:\b(?P<all>\d) days[,;.]? )?(?:the )?\b(?P<some>\d) {_SORT}{_OF}(?P<minutes>\d+) min(?:,|;| and|, and|,? the)+ "
    rf"(?:the )?(?P<rest>\d|third|fourth|fifth|last|others?|rest|remaining) {_SORT}{_OF}(?P<other>\d\d\d?)(?: min)?(?: weekly| a week)?(?=[,.;]|$)"
)
"""Some of the days have one length, the rest of them another."""
_HALVES: Final = re.compile(
    r",? \b(\d) (upper|lower)(?: body)?(?: days)?(?: and|,) (\d) (upper|lower)(?: body)?(?: days)?(?=[,.;]|$)"
)
_COUNT: Final = re.compile(r"\b(\d) days\b")


def counts_parted(text: str) -> str:
    """The text with a clause for each length of its days, and upper and lower days in turn where there are as many of both;
    unchanged where the counts do not add up."""
    return _LENGTHS.sub(_lengths, _in_turn(text))


def _lengths(found: re.Match[str]) -> str:
    some, rest = int(found["some"]), found["rest"]
    whole = int(found["all"] or 0)
    left = whole - some if rest.startswith(("other", "rest", "remaining")) else 1
    others = int(rest) if rest.isdigit() else left
    if others < 1 or (whole and some + others != whole) or not (whole or rest.isdigit()):
        return found[0]
    return f"{some} days x {found['minutes']} min, {others} days x {found['other']} min"


def _in_turn(text: str) -> str:
    found, counts = _HALVES.search(text), _COUNT.findall(text)
    if not found or found[1] != found[3] or found[2] == found[4] or counts != [str(2 * int(found[1]))]:
        return text
    return f"{text[: found.start()]}, {found[2]} {found[4]}{text[found.end() :]}"
