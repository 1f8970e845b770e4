"""A calendar of a season in CSV: from which date to which there are how many training days, of how many minutes."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from datetime import date
from itertools import combinations
from typing import Final

from setwright.catalogue.entries import Catalogue
from setwright.catalogue.faults import Fault, UsageFault
from setwright.catalogue.near import did_you_mean, suggestion
from setwright.solver.brief.defaults import LIMITS
from setwright.solver.brief.phrase.lexicon import lexicon_of
from setwright.solver.foreign.notes import Notes
from setwright.solver.foreign.rows.csv_lines import lines_of_csv
from setwright.solver.uses.season.season_weeks import CalendarRow

NEEDED: Final = ("from", "to", "days", "minutes")
COLUMNS: Final = (*NEEDED, "kit")
MOST_ROWS: Final = 500
"""Rows beyond which a file is no calendar of a season."""
Cells = Mapping[str, str]


def read_calendar(data: bytes, where: str, catalogue: Catalogue) -> tuple[CalendarRow, ...]:
    """The rows of a calendar by date; raises UsageFault with every fault found, each led by `where` and its line."""
    lines = [(place, cells) for place, cells in lines_of_csv(data, where, Notes()) if any(cells)]
    if not lines:
        raise UsageFault(Fault(where, "is empty", f"write a heading {','.join(COLUMNS)} and a row for each span"))
    heading = [cell.lower() for cell in lines[0][1]]
    faults = list(_heading_faults(heading, where))
    if len(lines) - 1 > MOST_ROWS:
        faults.append(Fault(where, f"has {len(lines) - 1} rows, at most {MOST_ROWS} are read", "name a calendar"))
    if faults:
        raise UsageFault(faults)
    rows = [
        (place, _row(dict(zip(heading, cells, strict=False)), f"{where}: {place}", catalogue, faults))
        for place, cells in lines[1:]
    ]
    dated = [(place, row) for place, row in rows if row is not None]
    faults += _overlaps(dated, where)
    if faults:
        raise UsageFault(faults)
    return tuple(sorted((row for _, row in dated), key=lambda row: row.first))


def _heading_faults(heading: Sequence[str], where: str) -> Iterator[Fault]:
    for name in NEEDED:
        if name not in heading:
            yield Fault(f"{where}: heading", f"the column {name!r} is missing", f"the columns are {', '.join(COLUMNS)}")
    for name in dict.fromkeys(heading):
        if name and name not in COLUMNS:
            remedy = did_you_mean(name, COLUMNS) or f"the columns are {', '.join(COLUMNS)}"
            yield Fault(f"{where}: heading", f"{name!r} is no column of a calendar", remedy)
        if name and heading.count(name) > 1:
            yield Fault(f"{where}: heading", f"the column {name!r} stands twice", "keep one")


def _row(cells: Cells, where: str, catalogue: Catalogue, faults: list[Fault]) -> CalendarRow | None:
    """One row, whatever is amiss added to `faults`; None where it has no span of dates."""
    first, last = _date(cells, "from", where, faults), _date(cells, "to", where, faults)
    if first and last and last < first:
        faults.append(Fault(where, f"ends on {last}, before it begins on {first}", "put the earlier date under 'from'"))
    days = _whole(cells, "days", 0, where, faults)
    off = days == 0 and cells.get("minutes", "") in ("", "0")
    minutes = 0 if off else _whole(cells, "minutes", int(LIMITS["minutes"][0]), where, faults)
    kit = _kit(cells.get("kit", ""), where, catalogue, faults)
    if first is None or last is None or last < first:
        return None
    return CalendarRow(first, last, days, minutes, kit)


def _date(cells: Cells, name: str, where: str, faults: list[Fault]) -> date | None:
    said = cells.get(name, "")
    try:
        return date.fromisoformat(said)
    except ValueError:
        faults.append(Fault(f"{where}: {name}", f"got {said!r}, expected a date such as 2026-01-05"))
        return None


def _whole(cells: Cells, name: str, low: int, where: str, faults: list[Fault]) -> int:
    said, high = cells.get(name, ""), int(LIMITS[name][1])
    if said.isascii() and said.isdecimal() and low <= int(said) <= high:
        return int(said)
    remedy = "write 0 days for days off" if name == "minutes" else ""
    faults.append(Fault(f"{where}: {name}", f"got {said!r}, expected a whole number from {low} to {high}", remedy))
    return low


def _kit(said: str, where: str, catalogue: Catalogue, faults: list[Fault]) -> str | None:
    """The id of a kit by its id, name or alias; None for an empty cell."""
    if not said:
        return None
    lexicon = lexicon_of(catalogue)
    found = lexicon.resolve(said, ("kit",))
    if found is None:
        remedy = suggestion(lexicon.nearest(said, ("kit",))) or f"the kits are {', '.join(catalogue.kits)}"
        faults.append(Fault(f"{where}: kit", f"{said!r} is no kit", remedy))
        return None
    return found[1]


def _overlaps(rows: Sequence[tuple[str, CalendarRow]], where: str) -> Iterator[Fault]:
    """A fault for each two rows that speak of the same date."""
    for (one, a), (other, b) in combinations(rows, 2):
        first, last = max(a.first, b.first), min(a.last, b.last)
        if first <= last:
            dates = str(first) if first == last else f"{first} to {last}"
            yield Fault(f"{where}: {other}", f"has {dates} in common with {one}", "give each date to one row")
