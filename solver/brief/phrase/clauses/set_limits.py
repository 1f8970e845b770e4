"""Limits of a muscle's weekly sets and days: `at most 8 sets`, `6-10 sets`, `on 2 days`."""

from __future__ import annotations

from typing import Any

from setwright.solver.brief.phrase.durations import TIMES
from setwright.solver.brief.phrase.token_reader import TokenReader

_SETS = ("sets", "set")
_DAYS = ("days", "day")
_MOST = (("at", "most"), ("up", "to"), ("no", "more", "than"))
_LEAST = (("at", "least"), ("no", "less", "than"), ("no", "fewer", "than"))
_EACH_WEEK = (("a", "week"), ("per", "week"), ("weekly",))


def at_limit(reader: TokenReader, ahead: int = 0) -> bool:
    """Whether a limit, or a number that may be one, stands so many tokens ahead."""
    phrases = (*_MOST, *_LEAST)
    if any(reader.sees(*words, ahead=ahead) for words in phrases):
        return True
    if reader.peek(ahead).text in TIMES:
        return True
    return reader.number(ahead) is not None or (reader.sees("on", ahead=ahead) and reader.number(ahead + 1) is not None)


def _take_times(reader: TokenReader) -> int | None:
    """Step over `twice a week` or `3 times a week`; how many days, or None where none stand here."""
    start = reader.position
    number: float | None = TIMES.get(reader.take_any(TIMES) or "")
    if number is None and (number := reader.number()) is not None:
        reader.position += 1
        if not reader.take_any(("times", "time", "x")):
            number = None
    if number is None or number != int(number) or not any(reader.take(*words) for words in _EACH_WEEK):
        reader.position = start
        return None
    return int(number)


def take_limits(reader: TokenReader) -> dict[str, Any]:
    """Step over the limits that stand here: the fields `at_least`, `at_most` (weekly sets) and `days_at_least` said."""
    found: dict[str, Any] = {}
    while part := _limit(reader):
        for field, value in part.items():
            if field in found and found[field] != value:
                said = f"{field.replace('_', ' ')} is said twice: {found[field]:g} and {value:g}"
                reader.fault(said, "keep one of the two")
            found.setdefault(field, value)
    return found


def _limit(reader: TokenReader) -> dict[str, Any]:
    """One limit, or nothing and the cursor unmoved."""
    start = reader.position
    if start and reader.sees("and") and at_limit(reader, 1) and reader.number(1) is None:
        reader.position += 1
    if (times := _take_times(reader)) is not None:
        return {"days_at_least": times}
    if any(reader.take(*words) for words in _MOST):
        number = _take_sets(reader)
        return {"at_most": number} if number is not None else _no_number(reader, start)
    if any(reader.take(*words) for words in _LEAST):
        days = _take_days(reader)
        if days is not None:
            return {"days_at_least": days}
        number = _take_sets(reader)
        return {"at_least": number} if number is not None else _no_number(reader, start)
    if reader.take("on"):
        days = _take_days(reader)
        if days is not None:
            return {"days_at_least": days}
    elif reader.number() is not None:
        return _band(reader)
    reader.position = start
    return {}


def _no_number(reader: TokenReader, start: int) -> dict[str, Any]:
    """Keep the fault of a limit without its number and step over it."""
    text = reader.text_from(start)
    reader.take_any(_SETS)
    reader.fault(f"'{text}' names no number of sets", f"write for example {text} 8 sets")
    return {}


def _take_sets(reader: TokenReader) -> float | None:
    number = reader.number()
    if number is None:
        return None
    reader.position += 1
    reader.take_any(_SETS)
    _take_each_week(reader)
    return number


def _take_each_week(reader: TokenReader) -> None:
    """Step over `a week` and the like after a number of sets or days."""
    for words in _EACH_WEEK:
        if reader.take(*words):
            return


def _take_days(reader: TokenReader) -> int | None:
    number = reader.number()
    if number is None or reader.peek(1).text not in _DAYS or number != int(number):
        return None
    reader.position += 2
    _take_each_week(reader)
    return int(number)


def _band(reader: TokenReader) -> dict[str, Any]:
    """`6-10 sets`, `6 to 10 sets` or `8 sets`."""
    low = reader.number()
    if reader.peek(1).text in _SETS:
        reader.position += 2
        found = {"at_least": low, "at_most": low}
    elif (reader.peek(1).sort == "range" or reader.sees("to", ahead=1)) and reader.peek(3).text in _SETS:
        high = reader.number(2)
        reader.position += 4
        found = {"at_least": low, "at_most": high}
    elif reader.peek(1).sort == "range" and reader.number(2) is not None:
        text = f"{reader.peek().text}-{reader.peek(2).text}"
        reader.position += 3
        reader.fault(f"'{text}' does not say of what", f"write {text} sets")
        return {}
    else:
        return {}
    _take_each_week(reader)
    return found
