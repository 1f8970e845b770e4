"""What a coach writes in a cell as a number: whole numbers, ranges of repetitions, rests."""

from __future__ import annotations

import re
from typing import Any, Final

_SPAN: Final = re.compile(r"(\d{1,3})(?:\s*(?:to|-|\N{EN DASH})\s*(\d{1,3}))?\s*(?:/side|/leg|/arm|each(?: side)?)?")
_HOLD: Final = re.compile(
    r"(\d{1,3})(?:\s*(?:to|-|\N{EN DASH})\s*(\d{1,3}))?\s*(?:s|sec|secs|seconds)(?:\s*(?:/side|each(?: side)?))?"
)
_CLOCK: Final = re.compile(r"(\d{1,3}):([0-5]\d)")
_SECONDS: Final = re.compile(r"(\d{1,4})\s*(?:s|sec|secs|seconds)?")
_MINUTES: Final = re.compile(r"(\d{1,2}(?:\.\d)?)\s*(?:min|mins|minutes|m)")


def whole(value: Any) -> Any:
    """A whole number as such; anything else as it is, for the reader to fault."""
    if isinstance(value, str) and value.strip().isdecimal() and len(value.strip()) < 6:
        return int(value.strip())
    return value


def span(value: Any) -> Any:
    """8-12, 8 to 12 or 8 as two ends."""
    if isinstance(value, str) and (found := _SPAN.fullmatch(value.strip().lower())):
        return [int(found[1]), int(found[2] or found[1])]
    return [value, value] if type(value) is int else list(value) if isinstance(value, tuple) else value


def hold(value: Any) -> tuple[int, int] | None:
    """30-45 s, 30 to 45 s or 30 s as two ends in seconds; None where no seconds are said."""
    found = _HOLD.fullmatch(value.strip().lower()) if isinstance(value, str) else None
    return None if found is None else (int(found[1]), int(found[2] or found[1]))


def seconds(value: Any) -> Any:
    """90, 1:30, 90 s or 1.5 min as whole seconds."""
    if not isinstance(value, str):
        return value
    text = value.strip().lower()
    if found := _CLOCK.fullmatch(text):
        return 60 * int(found[1]) + int(found[2])
    if found := _SECONDS.fullmatch(text):
        return int(found[1])
    if found := _MINUTES.fullmatch(text):
        return round(60 * float(found[1]))
    return value
