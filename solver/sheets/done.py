"""What was done, read back from a filled-in workbook: every set with its place, and every cell that is amiss."""

from __future__ import annotations

import io
import re
import zipfile
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from datetime import date, datetime
from typing import TYPE_CHECKING, Any, Final

from setwright.catalogue.faults import Fault, SetwrightError, UsageFault
from setwright.solver.sheets import log_sheet

if TYPE_CHECKING:
    from openpyxl.cell.cell import Cell
    from openpyxl.worksheet.worksheet import Worksheet

MOST_BYTES: Final = 5_000_000
MOST_UNPACKED: Final = 50_000_000
MOST_ROWS, MOST_COLUMNS, MOST_SETS = 200, 80, 20
"""What is looked at in a sheet: a card is far smaller."""
MOST_LETTERS: Final = 2_000


@dataclass(frozen=True)
class DoneSet:
    """One set as done; `load` in the client's unit, None where none was written; `where` is its cell."""

    exercise: str
    number: int
    load: float | None
    reps: int
    where: str


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
    check_size(data, where)
    faults: list[Fault] = []
    found = [session_of(sheet, faults, where) for sheet in opened(data, where).worksheets]
    sessions = [session for session in found if session is not None]
    if not sessions:
        said = "holds no sheet of a session"
        raise UsageFault(Fault(where, said, "name a workbook written by `setwright sheet --as xlsx`"))
    numbers = [session.number for session in sessions]
    twice = sorted({number for number in numbers if numbers.count(number) > 1})
    faults += [Fault(where, f"session {number} stands on two sheets", "keep one of them") for number in twice]
    return Done(tuple(sorted(sessions, key=lambda s: s.number)), tuple(faults))


def check_size(data: bytes, where: str) -> None:
    """Refuse what is no package, is too large, or would unpack to more than a week can be."""
    if len(data) > MOST_BYTES:
        raise UsageFault(Fault(where, "is larger than 5 MB, expected one week", "name the workbook of one week"))
    try:
        with zipfile.ZipFile(io.BytesIO(data)) as package:
            unpacked = sum(part.file_size for part in package.infolist())
    except (zipfile.BadZipFile, OSError, ValueError):
        raise UsageFault(Fault(where, "is no xlsx workbook", "save it as xlsx")) from None
    if unpacked > MOST_UNPACKED:
        raise UsageFault(Fault(where, "unpacks to more than 50 MB, expected one week", "name another file"))


def opened(data: bytes, where: str) -> Any:
    """The workbook with values in place of formulas; links to other files are not followed."""
    try:
        from openpyxl import load_workbook
    except ModuleNotFoundError:
        said = "cannot be read: openpyxl is not installed"
        raise SetwrightError(Fault(where, said, "pip install 'setwright[xlsx]'")) from None
    try:
        return load_workbook(io.BytesIO(data), data_only=True, keep_links=False)
    except Exception as error:  # whatever a broken package makes the library raise is one fault
        said = f"is no xlsx workbook that can be read ({type(error).__name__})"
        raise UsageFault(Fault(where, said, "save it again as xlsx")) from None


def session_of(sheet: Worksheet, faults: list[Fault], where: str) -> DoneSession | None:
    """One sheet's session, or None where the sheet is of another kind."""
    keys = keys_of(sheet)
    if keys is None:
        return None
    reader = _Sheet(sheet, keys, faults, where)
    named = dict(reader.named())
    number, weekday = next((split(name) for name in named if name.startswith(log_sheet.SESSION)), (0, None))
    if not number:
        reader.fault("", f"the row {log_sheet.SESSION} is missing", "take the sheet as setwright wrote it")
    lines = [(row, name) for row, name in reader.rows() if not name.startswith("@")]
    return DoneSession(
        number=number,
        weekday=weekday,
        date=reader.date(named.get(log_sheet.DATE)),
        minutes=reader.whole(named.get(log_sheet.MINUTES), log_sheet.MOST_MINUTES),
        how_hard=reader.number(named.get(log_sheet.HARD), log_sheet.HARDEST),
        sets=tuple(done for row, name in lines for done in reader.sets(row, name)),
        notes=tuple(reader.notes(lines, named.get(log_sheet.REMARKS))),
    )


def keys_of(sheet: Worksheet) -> dict[str, int] | None:
    """Key -> column, from the row that holds the key of the column of names; None where no row does."""
    if not hasattr(sheet, "iter_rows"):
        return None
    for row in sheet.iter_rows(max_row=MOST_ROWS, max_col=MOST_COLUMNS):
        found = {cell.value.strip(): cell.column for cell in row if isinstance(cell.value, str)}
        if log_sheet.ID in found:
            return found
    return None


def split(name: str) -> tuple[int, str | None]:
    """The number and weekday in @session 1 mon."""
    found = re.fullmatch(rf"{log_sheet.SESSION} (\d{{1,2}})(?: ([a-z]{{3}}))?", name)
    return (int(found[1]), found[2]) if found else (0, None)


class _Sheet:
    """Reads the cells of one session's sheet and keeps the faults met."""

    def __init__(self, sheet: Worksheet, keys: Mapping[str, int], faults: list[Fault], where: str) -> None:
        self.sheet, self.keys, self.faults, self.file = sheet, keys, faults, where

    def fault(self, cell: str, said: str, remedy: str = "") -> None:
        place = f"{self.sheet.title}!{cell}" if cell else self.sheet.title
        self.faults.append(Fault(f"{self.file}: {place}", said, remedy))

    def at(self, row: int | None, key: str) -> Cell | None:
        column = self.keys.get(key)
        return None if row is None or column is None else self.sheet.cell(row, column)  # type: ignore[return-value]

    def rows(self) -> Iterator[tuple[int, str]]:
        """Each row with a name, and the name: an exercise's id or a word led by @."""
        for row in range(1, min(self.sheet.max_row, MOST_ROWS) + 1):
            value = self.sheet.cell(row, self.keys[log_sheet.ID]).value
            if isinstance(value, str) and value.strip() and value.strip() != log_sheet.ID:
                yield row, value.strip()

    def named(self) -> Iterator[tuple[str, int]]:
        return ((name, row) for row, name in self.rows() if name.startswith("@"))

    def sets(self, row: int, exercise: str) -> Iterator[DoneSet]:
        """The sets of one row whose repetitions were written."""
        for number in range(1, MOST_SETS + 1):
            load_cell, reps_cell = self.at(row, log_sheet.load_key(number)), self.at(row, log_sheet.reps_key(number))
            if load_cell is None or reps_cell is None:
                return
            before = len(self.faults)
            load, reps = self.value(load_cell, log_sheet.MOST_LOAD), self.value(reps_cell, log_sheet.MOST_REPS, True)
            if reps is not None and len(self.faults) == before:
                yield DoneSet(exercise, number, load, int(reps), f"{self.sheet.title}!{reps_cell.coordinate}")
            elif load is not None and reps is None and len(self.faults) == before:
                self.fault(reps_cell.coordinate, "a load without repetitions", "write how many were done")

    def value(self, cell: Cell, most: float, whole: bool = False) -> float | None:
        """A cell's number from 0 to `most`; None where it is empty or was faulted."""
        said = cell.value
        if said is None or (isinstance(said, str) and not said.strip()):
            return None
        number = number_of(said)
        kind = "a whole number" if whole else "a number"
        if number is None or not 0 <= number <= most or (whole and number != int(number)):
            self.fault(cell.coordinate, f"got {str(said)[:40]!r}, expected {kind} from 0 to {most}")
            return None
        return number

    def number(self, row: int | None, most: float) -> float | None:
        cell = self.at(row, log_sheet.load_key(1))
        return None if cell is None else self.value(cell, most)

    def whole(self, row: int | None, most: float) -> int | None:
        cell = self.at(row, log_sheet.load_key(1))
        found = None if cell is None else self.value(cell, most, True)
        return None if found is None else int(found)

    def date(self, row: int | None) -> date | None:
        """The day that was written, as a date or as ISO text."""
        cell = self.at(row, log_sheet.load_key(1))
        said = None if cell is None else cell.value
        if isinstance(said, datetime):
            return said.date()
        if said is None or isinstance(said, date):
            return said
        try:
            return date.fromisoformat(str(said).strip())
        except ValueError:
            assert cell is not None
            self.fault(cell.coordinate, f"got {str(said)[:40]!r}, expected a date such as 2026-01-05")
            return None

    def notes(self, lines: list[tuple[int, str]], remarks: int | None) -> Iterator[tuple[str, str]]:
        """The words written beside a line or under the session."""
        cells = [(name, self.at(row, log_sheet.NOTES)) for row, name in lines]
        cells.append(("", self.at(remarks, log_sheet.load_key(1))))
        for name, cell in cells:
            if cell is not None and cell.value is not None and str(cell.value).strip():
                yield name, str(cell.value).strip()[:MOST_LETTERS]


def number_of(said: object) -> float | None:
    """A number, also one typed as text with a point or a comma."""
    if isinstance(said, bool):
        return None
    if isinstance(said, int | float):
        return float(said)
    if isinstance(said, str) and re.fullmatch(r"\d{1,6}(?:[.,]\d{1,3})?", said.strip()):
        return float(said.strip().replace(",", "."))
    return None
