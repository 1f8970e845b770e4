"""A table of sets, whatever file it stands in: its lines, which may be gone through more than once."""

from __future__ import annotations

import csv as standard
import io
from collections.abc import Callable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from typing import Any, Final

from setwright.catalogue.faults import Fault, UsageFault
from setwright.solver.foreign.log.tables.log_heading import is_heading
from setwright.solver.foreign.notes import Notes
from setwright.solver.foreign.rows.csv_lines import decoded
from setwright.solver.sheets.plain.csv_file import unguarded

Line = tuple[int, Sequence[Any]]
"""A line's number, counted from 1, and its cells."""
MARKS: Final = ",;\t|"
FIRST_LINES: Final = 50
LONGEST: Final = 10_000
"""Among so many lines the heading is looked for, and so many letters may be in it."""
MOST_BYTES: Final = 50_000_000
MOST_ROWS: Final = 500_000
MOST_COLUMNS: Final = 200
"""What is read of a log: ten years of daily sessions with a hundred sets are 365,000 rows."""


@dataclass(frozen=True)
class Table:
    """A table's lines, the sheet that it stands on, and what a line is called: line in a text, row on a sheet."""

    lines: Callable[[], Iterator[Line]]
    sheet: str = ""
    noun: str = "line"

    def place(self, line: int) -> str:
        """Where a line stands: line 3, or Week 1, row 3."""
        return f"{self.sheet}, {self.noun} {line}" if self.sheet else f"{self.noun} {line}"

    def first(self) -> list[Line]:
        """The lines among which the heading stands."""
        return [line for line, _ in zip(self.lines(), range(FIRST_LINES), strict=False)]


def table_of_text(data: bytes, where: str, notes: Notes, columns: Mapping[str, str]) -> Table:
    """The table of a text with commas, semicolons, tabs or bars between its cells; raises UsageFault for none."""
    text = decoded(data, where, notes)
    if not text.strip():
        raise UsageFault(Fault(where, "is empty", "write a heading and a row for each set"))
    mark = _mark(text, columns)

    def lines() -> Iterator[Line]:
        table = standard.reader(io.StringIO(text, newline=""), delimiter=mark, strict=True)
        try:
            for place, cells in enumerate(table):
                check_size(place, cells, where)
                yield table.line_num, [unguarded(cell).strip() if cell[:1] == "'" else cell.strip() for cell in cells]
        except standard.Error as error:
            at = f"{where}: line {table.line_num}"
            raise UsageFault(Fault(at, f"is not CSV: {error}", "close each quote, or save it again")) from None

    return Table(lines)


def _mark(text: str, columns: Mapping[str, str]) -> str:
    """What stands between the cells: the mark by which a line becomes a heading, else the commonest of the first."""
    head = [line.rstrip("\r\n") for line, _ in zip(io.StringIO(text), range(FIRST_LINES), strict=False)]
    for line in head:
        for mark in MARKS:
            if (
                mark in line
                and len(line) < LONGEST
                and is_heading(next(standard.reader([line], delimiter=mark), []), columns)
            ):
                return mark
    first = next((line for line in head if line.strip()), "")
    return max(MARKS, key=first.count)


def check_size(place: int, cells: Sequence[Any], where: str) -> None:
    """Raise UsageFault for a line, counted from 0, beyond what a log has, and for too many cells."""
    if place >= MOST_ROWS:
        raise UsageFault(Fault(where, f"has more than {MOST_ROWS} rows", "split the file"))
    if len(cells) > MOST_COLUMNS:
        raise UsageFault(Fault(where, f"has more than {MOST_COLUMNS} columns", "keep those of the log"))
