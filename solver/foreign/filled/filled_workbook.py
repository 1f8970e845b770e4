"""What was done, read back from a filled-in workbook: every set with its place, and every cell that is amiss."""

from __future__ import annotations

import re
from dataclasses import dataclass
from datetime import date
from typing import TYPE_CHECKING

from setwright.catalogue.faults import Fault, UsageFault
from setwright.solver.foreign.filled.filled_cells import MOST_COLUMNS, MOST_ROWS, DoneSet, SessionCells
from setwright.solver.foreign.rows.opened_workbook import opened_workbook
from setwright.solver.sheets.xlsx import log_keys

if TYPE_CHECKING:
    from openpyxl.worksheet.worksheet import Worksheet

__all__ = ["Done", "DoneSession", "DoneSet", "read_workbook"]


@dataclass(frozen=True)
class DoneSession:
    """One session as done; what was not written is None or empty. `notes` holds (exercise or nothing, words)."""

    number: int
    weekday: str | None
    date: date | None
    minutes: int | None
    how_hard: float | None
    sets: tuple[DoneSet, ...]
    notes: tuple[tuple[str, str], ...]


@dataclass(frozen=True)
class Done:
    """All that a workbook says, and the faults of the cells that were left out."""

    sessions: tuple[DoneSession, ...]
    faults: tuple[Fault, ...]


def read_workbook(data: bytes, where: str = "week.xlsx") -> Done:
    """What was done; raises UsageFault where the file is no workbook of a week, SetwrightError without openpyxl."""
    faults: list[Fault] = []
    found = [_session_of(sheet, faults, where) for sheet in opened_workbook(data, where).worksheets]
    sessions = [session for session in found if session is not None]
    if not sessions:
        said = "holds no sheet of a session"
        raise UsageFault(Fault(where, said, "name a workbook that setwright wrote as a week's sheet"))
    numbers = [session.number for session in sessions]
    twice = sorted({number for number in numbers if numbers.count(number) > 1})
    faults += [Fault(where, f"session {number} stands on two sheets", "keep one of them") for number in twice]
    return Done(tuple(sorted(sessions, key=lambda s: s.number)), tuple(faults))


def _session_of(sheet: Worksheet, faults: list[Fault], where: str) -> DoneSession | None:
    """One sheet's session, or None where the sheet is of another kind."""
    keys = _keys_of(sheet)
    if keys is None:
        return None
    reader = SessionCells(sheet, keys, faults, where)
    named = dict(reader.named())
    number, weekday = next((_split(name) for name in named if name.startswith(log_keys.SESSION)), (0, None))
    if not number:
        reader.fault("", f"the row {log_keys.SESSION} is missing", "take the sheet as setwright wrote it")
    lines = [(row, name) for row, name in reader.rows() if not name.startswith("@")]
    return DoneSession(
        number=number,
        weekday=weekday,
        date=reader.date(named.get(log_keys.DATE)),
        minutes=reader.whole(named.get(log_keys.MINUTES), log_keys.MOST_MINUTES),
        how_hard=reader.number(named.get(log_keys.HARD), log_keys.HARDEST),
        sets=tuple(done for row, name in lines for done in reader.sets(row, name)),
        notes=tuple(reader.notes(lines, named.get(log_keys.REMARKS))),
    )


def _keys_of(sheet: Worksheet) -> dict[str, int] | None:
    """Key -> column, from the row that holds the key of the column of names; None where no row does."""
    if not hasattr(sheet, "iter_rows"):
        return None
    for row in sheet.iter_rows(max_row=MOST_ROWS, max_col=MOST_COLUMNS):
        found = {cell.value.strip(): cell.column for cell in row if isinstance(cell.value, str)}
        if log_keys.ID in found:
            return found
    return None


def _split(name: str) -> tuple[int, str | None]:
    """The number and weekday in @session 1 mon."""
    found = re.fullmatch(rf"{log_keys.SESSION} (\d{{1,2}})(?: ([a-z]{{3}}))?", name)
    return (int(found[1]), found[2]) if found else (0, None)
