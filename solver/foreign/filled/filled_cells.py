"""The cells of one filled-in session sheet: numbers, dates and words, and a fault for each that is none."""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from datetime import date, datetime
from typing import TYPE_CHECKING

from setwright.catalogue.faults import Fault
from setwright.solver.brief.defaults import MOST_SETS
from setwright.solver.sheets.document.progress.log_model import MOST_LETTERS
from setwright.solver.sheets.xlsx import log_keys

if TYPE_CHECKING:
    from openpyxl.cell.cell import Cell
    from openpyxl.worksheet.worksheet import Worksheet

MOST_ROWS, MOST_COLUMNS = 200, 80
"""What is looked at in a sheet: a card is far smaller."""


@dataclass(frozen=True)
class DoneSet:
    """One set as done; `load` in the client's unit, None where none was written; `where` is its cell."""

    exercise: str
    number: int
    load: float | None
    reps: int
    where: str


class SessionCells:
    """Reads the cells of one session's sheet and keeps the faults met."""

    def __init__(self, sheet: Worksheet, keys: Mapping[str, int], faults: list[Fault], where: str) -> None:
        self.sheet, self.keys, self.faults, self.file = sheet, keys, faults, where

    def fault(self, cell: str, said: str, remedy: str = "") -> None:
        """Keep a fault of a cell, or of the sheet where `cell` is empty."""
        place = f"{self.sheet.title}!{cell}" if cell else self.sheet.title
        self.faults.append(Fault(f"{self.file}: {place}", said, remedy))

    def at(self, row: int | None, key: str) -> Cell | None:
        """The cell of a row in the column of a key; None where the sheet has no such row or column."""
        column = self.keys.get(key)
        return None if row is None or column is None else self.sheet.cell(row, column)  # type: ignore[return-value]

    def rows(self) -> Iterator[tuple[int, str]]:
        """Each row with a name, and the name: an exercise's id or a word led by @."""
        for row in range(1, min(self.sheet.max_row, MOST_ROWS) + 1):
            value = self.sheet.cell(row, self.keys[log_keys.ID]).value
            if isinstance(value, str) and value.strip() and value.strip() != log_keys.ID:
                yield row, value.strip()

    def named(self) -> Iterator[tuple[str, int]]:
        """The rows that stand for the session and not for a line: their word, led by @, and the row."""
        return ((name, row) for row, name in self.rows() if name.startswith("@"))

    def sets(self, row: int, exercise: str) -> Iterator[DoneSet]:
        """The sets of one row whose repetitions were written."""
        for number in range(1, MOST_SETS + 1):
            load_cell, reps_cell = self.at(row, log_keys.load_key(number)), self.at(row, log_keys.reps_key(number))
            if load_cell is None or reps_cell is None:
                return
            before = len(self.faults)
            load, reps = self.value(load_cell, log_keys.MOST_LOAD), self.value(reps_cell, log_keys.MOST_REPS, True)
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
        wanted = "a whole number" if whole else "a number"
        if number is None or not 0 <= number <= most or (whole and number != int(number)):
            self.fault(cell.coordinate, f"got {str(said)[:40]!r}, expected {wanted} from 0 to {most}")
            return None
        return number

    def number(self, row: int | None, most: float) -> float | None:
        """The number from 0 to `most` that a row of the session holds; None where it is empty or was faulted."""
        cell = self.at(row, log_keys.load_key(1))
        return None if cell is None else self.value(cell, most)

    def whole(self, row: int | None, most: float) -> int | None:
        """The same as a whole number."""
        cell = self.at(row, log_keys.load_key(1))
        found = None if cell is None else self.value(cell, most, True)
        return None if found is None else int(found)

    def date(self, row: int | None) -> date | None:
        """The day that was written, as a date or as ISO text."""
        cell = self.at(row, log_keys.load_key(1))
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
        cells = [(name, self.at(row, log_keys.NOTES)) for row, name in lines]
        cells.append(("", self.at(remarks, log_keys.load_key(1))))
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
