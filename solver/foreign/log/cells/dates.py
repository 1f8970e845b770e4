"""Dates and times of day as people write them, and the order of day and month that a column's rows settle."""

from __future__ import annotations

import re
from collections.abc import Iterable
from datetime import date, datetime, time
from typing import Any, Final, Literal

from setwright.catalogue.faults import shown
from setwright.solver.foreign.log.cells.cell_fault import CellFault
from setwright.solver.foreign.rows.typed_cells import plain

Order = Literal["day first", "month first", "either"]
"""How numeric dates are read; either where a column has both orders, which is a fault of its own."""
EARLIEST: Final = date(1950, 1, 1)
"""Before this a date is a slip of the pen (convention)."""
_ISO: Final = re.compile(r"(\d{4})[-/.](\d{1,2})[-/.](\d{1,2})|(\d{4})(\d{2})(\d{2})")
_NUMERIC: Final = re.compile(r"(\d{1,2})\s*([-/.])\s*(\d{1,2})\s*\2\s*(\d{2}|\d{4})")
_NAMED: Final = re.compile(
    r"(?:[a-z]{3,9},?\s+)?(?:(\d{1,2})(?:st|nd|rd|th)?[\s.-]+([a-z]{3,9})|([a-z]{3,9})\s+(\d{1,2})(?:st|nd|rd|th)?)"
    r"\.?,?[\s-]+(\d{4})"
)
_TIME: Final = re.compile(r"(\d{1,2})[:h](\d{2})(?::(\d{2})(?:\.\d+)?)?\s*([ap])?\.?(?:m\.?)?")
_WITH_TIME: Final = re.compile(r"(.*\d)(?:t|,?\s+)(\d{1,2}:\d{2}(?::\d{2})?(?:\.\d+)?(?:\s*[ap]\.?m\.?)?)(.*)")
_ZONE: Final = re.compile(r"\s*(?:z|utc|gmt|[+-]\d{2}:?\d{2})")
MONTHS: Final = ("jan", "feb", "mar", "apr", "may", "jun", "jul", "aug", "sep", "oct", "nov", "dec")
_MONTH_NAMES: Final = (
    *("january", "february", "march", "april", "may", "june"),
    *("july", "august", "september", "october", "november", "december"),
)
EXPECTED: Final = "expected a date such as 2026-01-05"


def settled_order(cells: Iterable[Any]) -> Order | None:
    """The order that the numeric dates of a column show by a day above 12; None where none does.

    Raises CellFault where one shows day first and another month first.
    """
    first: dict[Order, str] = {}
    for cell in cells:
        found = _numeric(cell)
        if found and int(found[1]) > 12 >= int(found[3]):
            first.setdefault("day first", str(cell).strip())
        elif found and int(found[3]) > 12 >= int(found[1]):
            first.setdefault("month first", str(cell).strip())
    if len(first) > 1:
        both = f"{shown(first['day first'])} has the day first and {shown(first['month first'])} the month"
        raise CellFault(both, "write every date as 2026-01-05")
    return next(iter(first), None)


def date_of(cell: Any, order: Order | None) -> tuple[date, time | None]:
    """The day that a cell says, and the time where it says one; raises CellFault."""
    if isinstance(cell, datetime):
        return _possible(cell.date(), cell), cell.time() if cell.time() != time() else None
    if isinstance(cell, date):
        return _possible(cell, cell), None
    text = str(plain(cell)).lower() if isinstance(cell, str) else ""
    when = None
    if split := _WITH_TIME.fullmatch(text):
        if split[3].strip() and not _ZONE.fullmatch(split[3]):
            raise CellFault(f"got {shown(cell)}, {EXPECTED}")
        text, when = split[1].strip(" ,"), time_of(split[2])
    return _possible(_day(text, cell, order), cell), when


def _day(text: str, cell: Any, order: Order | None) -> date:
    try:
        if found := _ISO.fullmatch(text):
            return date(*(int(part) for part in found.groups() if part))
        if found := _NAMED.fullmatch(text):
            month = found[2] or found[3]
            if month[:3] in MONTHS and (month in MONTHS or month == "sept" or month in _MONTH_NAMES):
                return date(int(found[5]), MONTHS.index(month[:3]) + 1, int(found[1] or found[4]))
        if found := _NUMERIC.fullmatch(text):
            return _by_order(found, cell, order)
    except ValueError:
        raise CellFault(f"got {shown(cell)}, which is no day of the calendar", EXPECTED) from None
    raise CellFault(f"got {shown(cell)}, {EXPECTED}")


def _by_order(found: re.Match[str], cell: Any, order: Order | None) -> date:
    """A numeric date by the column's order; dots alone mean day first (common practice, no source)."""
    one, other, year = int(found[1]), int(found[3]), int(found[4])
    if len(found[4]) < 4:
        raise CellFault(f"got {shown(cell)}, whose year is short", "write the year in full, such as 2026-01-05")
    if order == "either":
        order = "month first" if other > 12 else "day first"
    order = order or ("day first" if found[2] == "." or one == other else None)
    if order is None:
        either = f"{year}-{other:02d}-{one:02d} or {year}-{one:02d}-{other:02d}"
        raise CellFault(f"got {shown(cell)}, which may be {either}", f"write {either}")
    return date(year, other, one) if order == "day first" else date(year, one, other)


def _numeric(cell: Any) -> re.Match[str] | None:
    """The parts of a numeric date, also where a time follows."""
    return _NUMERIC.match(plain(cell)) if isinstance(cell, str) else None


def _possible(found: date, cell: Any) -> date:
    if found < EARLIEST:
        raise CellFault(f"got {shown(str(cell))}, expected a date from {EARLIEST.isoformat()} on")
    return found


def time_of(cell: Any) -> time:
    """The time of day that a cell says: 18:03, 18:03:20, 6:03 pm; raises CellFault."""
    if isinstance(cell, time):
        return cell.replace(tzinfo=None)
    found = _TIME.fullmatch(str(plain(cell)).lower()) if isinstance(cell, str) else None
    if found:
        hour, half = int(found[1]), found[4]
        if half and 1 <= hour <= 12:
            hour = hour % 12 + (12 if half == "p" else 0)
        elif half:
            hour = 24
        if hour < 24 and int(found[2]) < 60 and int(found[3] or 0) < 60:
            return time(hour, int(found[2]), int(found[3] or 0))
    raise CellFault(f"got {shown(str(cell))}, expected a time of day such as 18:03")


def moment_of(cell: Any, on: date, order: Order | None) -> datetime:
    """A cell's local date and time; a time alone is that of the day `on`. Raises CellFault."""
    try:
        return datetime.combine(on, time_of(cell))
    except CellFault:
        if not isinstance(cell, datetime | str) or (isinstance(cell, str) and not _WITH_TIME.fullmatch(cell.lower())):
            raise
    day, when = date_of(cell, order)
    return datetime.combine(day, when or time())
