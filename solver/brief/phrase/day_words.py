"""The small words of the day clauses: what links days to their minutes, what follows them, what stands between."""

from __future__ import annotations

from setwright.solver.brief.defaults import WEEKDAYS
from setwright.solver.brief.phrase.clauses.themes import LINKS
from setwright.solver.brief.phrase.durations import DAY_NOUNS, at_duration
from setwright.solver.brief.phrase.token_reader import TokenReader

_EACH = (("each",), ("a", "day"), ("a", "session"), ("a", "time"), ("per", "day"), ("per", "session"))
_WEEKLY = (
    ("a", "week"),
    ("per", "week"),
    ("every", "week"),
    ("each", "week"),
    ("weekly",),
    ("/", "week"),
    ("/", "wk"),
    ("a", "wk"),
)
GROUPS = {
    "weekend": ("sat", "sun"),
    "weekends": ("sat", "sun"),
    "weekday": ("mon", "tue", "wed", "thu", "fri"),
    "weekdays": ("mon", "tue", "wed", "thu", "fri"),
}
"""Words for several days of the week."""
_BEFORE_A_DAY = ("on", "every", "at", "the")


def at_weekday(reader: TokenReader, ahead: int = 0) -> bool:
    """Whether a weekday or a word for several stands so many tokens ahead, with or without `on the` and the like."""
    while reader.peek(ahead).text in _BEFORE_A_DAY:
        ahead += 1
    return bool(reader.weekday(ahead)) or reader.peek(ahead).text in GROUPS


def take_weekday(reader: TokenReader) -> tuple[str, ...]:
    """Step over a weekday, a range of them or a word for several, with what stands before it; none where none is."""
    if not at_weekday(reader):
        return ()
    while reader.take_any(_BEFORE_A_DAY):
        pass
    if word := reader.take_any(GROUPS):
        return GROUPS[word]
    first = reader.weekday() or ""
    reader.position += 1
    if (reader.peek().sort == "range" or reader.sees("to")) and (last := reader.weekday(1)):
        reader.position += 2
        return weekdays_between(first, last)
    return (first,)


def at_count_of_days(reader: TokenReader) -> bool:
    """Whether the number here counts days: `3 days`, `3 x 40`, `3 x a week`, `three 40 minute sessions`."""
    if reader.peek(1).text in DAY_NOUNS or reader.peek(1).text in ("x", "by"):
        return True
    return reader.number(1) is not None and at_duration(reader, 1) and reader.peek(3).text in DAY_NOUNS


def weekdays_between(first: str, last: str) -> tuple[str, ...]:
    """The weekdays from one to another, past Sunday if need be."""
    start, end = WEEKDAYS.index(first), WEEKDAYS.index(last)
    count = (end - start) % 7 + 1
    return tuple(WEEKDAYS[(start + step) % 7] for step in range(count))


def skip_to_weekday(reader: TokenReader) -> None:
    """Step over separators when another weekday follows them."""
    start = reader.position
    reader.skip_separators()
    if not at_weekday(reader):
        reader.position = start


def skip_to_minutes(reader: TokenReader) -> None:
    """Step over separators when minutes follow them that do not begin a clause of their own: `40 min x 3 days`."""
    start = reader.position
    if reader.skip_separators() and not (at_duration(reader) and reader.peek(2).text not in ("x", "by")):
        reader.position = start


def take_links(reader: TokenReader) -> bool:
    """Step over `days`, `a week`, `x` and the like; whether one of them links a count of days to minutes."""
    linked = False
    while True:
        if reader.take_any(LINKS):
            linked = True
        elif not (reader.take_any(DAY_NOUNS) or any(reader.take(*words) for words in _WEEKLY)):
            return linked


def take_endings(reader: TokenReader) -> None:
    """Step over `each`, `a session`, `a week` after the minutes."""
    reader.take_any(DAY_NOUNS)
    while any(reader.take(*words) for words in (*_WEEKLY, *_EACH)):
        pass
