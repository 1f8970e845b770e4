"""The clauses that name the days: counts, weekdays, minutes and themes."""

from __future__ import annotations

from typing import Any

from setwright.solver.brief.defaults import LIMITS
from setwright.solver.brief.phrase.clauses.place_clauses import Place, take_place
from setwright.solver.brief.phrase.clauses.themes import LINKS, fault_mistyped_theme, take_cycle, take_theme
from setwright.solver.brief.phrase.day_words import (
    at_count_of_days,
    at_weekday,
    skip_to_minutes,
    skip_to_weekday,
    take_endings,
    take_links,
    take_weekday,
)
from setwright.solver.brief.phrase.durations import DAY_NOUNS, TIMES, at_duration, take_minutes
from setwright.solver.brief.phrase.token_reader import TokenReader


class DayClauses:
    """The day clauses of one phrase as raw days, put together when all are read."""

    def __init__(self) -> None:
        self.counted: list[tuple[list[dict[str, Any]], Place | None]] = []
        """The days of each clause that says their number alone, with the place it says of them."""
        self.named: list[tuple[list[dict[str, Any]], Place | None]] = []
        """The days of each clause that names weekdays, with the place it says of them."""
        self.cycle: tuple[str, ...] = ()
        """The themes that the days take in turn."""
        self.cycle_text = ""

    def put_cycle(self, reader: TokenReader) -> None:
        """Give the days in turn the themes that the phrase names for all of them."""
        rows = [row for rows, _ in (*self.counted, *self.named) for row in rows]
        if self.cycle and rows and len(rows) % len(self.cycle):
            reader.fault(
                f"'{self.cycle_text}' is {len(self.cycle)} themes in turn, and there are {len(rows)} days",
                "name the days with their themes, for example mon push, tue pull, thu lower 45 min",
            )
        elif any("focus" in row for row in rows) and self.cycle:
            reader.fault(f"'{self.cycle_text}' is said beside a day's own theme", "keep one of the two")
        elif self.cycle:
            for place, row in enumerate(rows):
                row["focus"] = self.cycle[place % len(self.cycle)]


def cycle_clause(reader: TokenReader, days: DayClauses) -> bool:
    """Read the themes of all days, `push pull legs`, `upper lower`, `full body`; whether they stood here."""
    start = reader.position
    if not (themes := take_cycle(reader)):
        return False
    days.cycle, days.cycle_text = themes, reader.text_from(start)
    return True


def days_clause(reader: TokenReader, days: DayClauses) -> bool:
    """Read one clause of days, with its place, into `days`; whether one stood here."""
    if at_weekday(reader):
        return _named(reader, days)
    start = reader.position
    if _every_other_day(reader, start):
        take_minutes(reader, unit_optional=False)
        return True
    if reader.take("daily") or reader.take("every", "day"):
        return _counted(reader, days, start, 7)
    if word := reader.take_any(TIMES):
        return _counted(reader, days, start, TIMES[word])
    if reader.number() is not None and at_count_of_days(reader):
        count = reader.number() or 0
        reader.position += 1
        return _counted(reader, days, start, count)
    if at_duration(reader):
        return _reversed(reader, days, start)
    return False


def _every_other_day(reader: TokenReader, start: int) -> bool:
    """Keep the fault of `every other day`, which is three days of one week and four of the next."""
    if not (reader.take("every", "other", "day") or reader.take("every", "second", "day")):
        return False
    said = reader.text_from(start)
    reader.fault(f"'{said}' is three days in one week and four in the next", "write 3 days x 40 min or 4 days x 40 min")
    return True


def _counted(reader: TokenReader, days: DayClauses, start: int, count: float) -> bool:
    """What follows a count of days: `3 days a week x 40 min`. True: such a clause is read even where it is faulty."""
    linked = take_links(reader)
    theme = _theme_or_turn(reader, days)
    linked = take_links(reader) or linked
    skip_to_minutes(reader)
    minutes = take_minutes(reader, unit_optional=linked)
    if minutes is None:
        text = reader.text_from(start)
        reader.fault(f"'{text}' does not say for how many minutes", "write for example 3 days x 40 min")
        return True
    take_endings(reader)
    theme = theme or _theme_or_turn(reader, days)
    _add_counted(reader, days, count, minutes, theme, take_place(reader))
    return True


def _theme_or_turn(reader: TokenReader, days: DayClauses) -> str | None:
    """Step over the theme of the days that are counted here, or the themes of all days in turn; the theme."""
    start = reader.position
    turn = take_cycle(reader)
    if len(turn) == 1:
        return turn[0]
    reader.position = start
    return None if cycle_clause(reader, days) else take_theme(reader)


def _reversed(reader: TokenReader, days: DayClauses, start: int) -> bool:
    """Minutes first: `40 min x 3 days`, `40 min mon wed`. True: such a clause is read even where it is faulty."""
    minutes = take_minutes(reader, unit_optional=False)
    take_endings(reader)
    if at_weekday(reader):
        found = _take_weekdays(reader)
        _add_named(reader, days, found, minutes or 0, take_theme(reader, named=True))
        return True
    if _every_other_day(reader, start):
        return True
    linked = reader.take_any(LINKS)
    if reader.at_separator() and reader.number(1) is not None and reader.peek(2).text in DAY_NOUNS:
        reader.skip_separators()
    count = reader.number()
    if count is not None and reader.peek(1).text in DAY_NOUNS:
        reader.position += 2
    elif count is not None and linked in ("x", "by") and (reader.peek(1).text == "" or reader.at_separator(1)):
        reader.position += 1
    elif word := reader.take_any(TIMES):
        count = TIMES[word]
    else:
        reader.fault(f"'{reader.text_from(start)}' does not say on how many days", "write for example 3 days x 40 min")
        return True
    take_endings(reader)
    _add_counted(reader, days, count, minutes or 0, take_theme(reader))
    return True


def _add_counted(
    reader: TokenReader, days: DayClauses, count: float, minutes: int, theme: str | None, place: Place | None = None
) -> None:
    low, high = LIMITS["days"]
    if count != int(count) or not low <= count <= high:
        reader.fault(f"got {count:g} days, expected a whole number from {low:g} to {high:g}")
        return
    days.counted.append(([_row(None, minutes, theme) for _ in range(int(count))], place))


def _named(reader: TokenReader, days: DayClauses) -> bool:
    """Weekdays, then their minutes: `mon upper, thu lower 60 min`. True: it is read even where it is faulty."""
    start = reader.position
    found = _take_weekdays(reader)
    reader.take(":")
    skip_to_minutes(reader)
    reader.take_any(LINKS)
    minutes = take_minutes(reader, unit_optional=True)
    if minutes is None:
        reader.fault(
            f"'{reader.text_from(start)}' does not say for how many minutes", "write for example mon wed 40 min"
        )
        return True
    take_endings(reader)
    theme = take_theme(reader, named=True)
    _add_named(reader, days, found, minutes, theme)
    return True


def _take_weekdays(reader: TokenReader) -> list[tuple[str, str | None]]:
    """Step over weekdays; a theme is that of all before it that have none: `mon thu push, tue pull`."""
    start = reader.position
    found: list[tuple[str, str | None]] = []
    while weekdays := take_weekday(reader):
        theme = take_theme(reader, named=True)
        if theme is None:
            fault_mistyped_theme(reader)
        found.extend((day, theme) for day in weekdays)
        before = reader.position
        skip_to_weekday(reader)
        if any(token.text == "or" for token in reader.tokens[before : reader.position]):
            said = reader.text_from(start, reader.position + 1)
            reader.fault(f"'{said}' leaves open which day it is", "name one of them, or write 2 days x 40 min")
    later: str | None = None
    for place in reversed(range(len(found))):
        day, own = found[place]
        later = own or later
        found[place] = day, later
    return found


def _add_named(
    reader: TokenReader, days: DayClauses, found: list[tuple[str, str | None]], minutes: int, theme: str | None
) -> None:
    """Add these weekdays, with the theme said of all where they have none of their own, and the place that follows."""
    rows = [_row(day, minutes, own or theme) for day, own in found]
    days.named.append((rows, take_place(reader)))


def _row(weekday: str | None, minutes: int, theme: str | None) -> dict[str, Any]:
    row: dict[str, Any] = {"weekday": weekday, "minutes": minutes, "focus": theme}
    return {field: value for field, value in row.items() if value is not None}
