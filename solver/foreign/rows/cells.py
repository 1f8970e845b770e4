"""What a coach writes in a cell: whole numbers, ranges of repetitions, holds, rests, techniques, days."""

from __future__ import annotations

import re
from typing import Any, Final

from setwright.solver.brief.defaults import WEEKDAY_NAMES, WEEKDAYS

_SPAN: Final = re.compile(r"(\d{1,3})(?:\s*(?:to|-|\N{EN DASH})\s*(\d{1,3}))?\s*(?:/side|/leg|/arm|each(?: side)?)?")
_HOLD: Final = re.compile(
    r"(\d{1,3})(?:\s*(?:to|-|\N{EN DASH})\s*(\d{1,3}))?\s*(?:s|sec|secs|seconds)(?:\s*(?:/side|each(?: side)?))?"
)
_CLOCK: Final = re.compile(r"(\d{1,3}):([0-5]\d)(?:\s*(?:min|mins|minutes|m))?")
_SECONDS: Final = re.compile(r"(\d{1,4})\s*(?:s|sec|secs|seconds|\"|'')?")
_MINUTES: Final = re.compile(r"(\d{1,2}(?:\.\d{1,2})?)\s*(?:min|mins|minutes|minute|m|')")
_BOTH: Final = re.compile(r"(\d{1,2})\s*(?:min|mins|minutes|m|')\s*([0-5]?\d)\s*(?:s|sec|secs|seconds|\"|'')?")


def whole_number(value: Any) -> Any:
    """A whole number that a text writes out; anything else as it is, for the reader to fault."""
    if isinstance(value, str) and value.strip().isdecimal() and len(value.strip()) < 6:
        return int(value.strip())
    return value


def rep_range(value: Any) -> list[Any] | None:
    """8-12, 8 to 12 or 8 as two ends; None where it is no range."""
    if isinstance(value, str) and (found := _SPAN.fullmatch(value.strip().lower())):
        return [int(found[1]), int(found[2] or found[1])]
    return [value, value] if type(value) is int else list(value) if isinstance(value, list | tuple) else None


def hold_seconds(value: Any) -> tuple[int, int] | None:
    """30-45 s, 30 to 45 s or 30 s as two ends in seconds; None where no seconds are said."""
    found = _HOLD.fullmatch(value.strip().lower()) if isinstance(value, str) else None
    return None if found is None else (int(found[1]), int(found[2] or found[1]))


def rest_seconds(value: Any) -> int | None:
    """90, 1:30, 90 s, 1.5 min or 1 min 30 s as whole seconds; None where it is no rest."""
    if type(value) is int:
        return value
    text = value.strip().lower().replace(",", ".") if isinstance(value, str) else ""
    if found := _CLOCK.fullmatch(text) or _BOTH.fullmatch(text):
        return 60 * int(found[1]) + int(found[2])
    if found := _SECONDS.fullmatch(text):
        return int(found[1])
    if found := _MINUTES.fullmatch(text):
        return round(60 * float(found[1]))
    return None


def technique_parts(value: Any) -> tuple[Any, Any]:
    """straight, drop 2 or rest-pause as the technique's word and the number after it, which is None where none is."""
    said = str(value or "straight").strip().lower()
    word, _, number = said.partition(" ")
    name = {"drops": "drop", "rest pause": "rest-pause"}.get(said if said == "rest pause" else word, word)
    return name, whole_number(number) if number and name == "drop" else None


def day_key(value: Any) -> str | None:
    """mon ... sun, or a session's number from 1 to 7; None where it is no day."""
    said = str(value).strip().lower()
    if said in WEEKDAYS or said in WEEKDAY_NAMES:
        return said[:3]
    number = said.removeprefix("session").removeprefix("day").strip()
    return str(int(number)) if number.isdecimal() and 1 <= int(number) <= len(WEEKDAYS) else None
