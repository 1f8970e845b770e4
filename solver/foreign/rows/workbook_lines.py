"""The lines of a week in a workbook: every sheet with a table of lines, its title the name of its day."""

from __future__ import annotations

from typing import Any

from setwright.catalogue.faults import Fault, UsageFault
from setwright.solver.foreign.filled.filled_cells import MOST_COLUMNS
from setwright.solver.foreign.notes import Notes
from setwright.solver.foreign.rows.header import READ, is_heading
from setwright.solver.foreign.rows.opened_workbook import opened_workbook
from setwright.solver.foreign.rows.raw_rows import RawLine, TableRow, rows_of_lines, texts_of

MOST_LINES = 11_000
"""Lines of a sheet that are looked at."""
PACKAGE = b"PK\x03\x04"
"""How a workbook begins."""


def rows_of_workbook(data: bytes, where: str, notes: Notes) -> list[TableRow]:
    """The rows of every sheet that has a heading; raises UsageFault where none has, SetwrightError without openpyxl."""
    found: list[TableRow] = []
    book = opened_workbook(data, where)
    sheets = [(sheet.title, _lines_of(sheet)) for sheet in book.worksheets]
    tables = [(title, lines) for title, lines in sheets if any(is_heading(texts_of(cells)) for _, cells in lines)]
    if not tables:
        said = "has no sheet with a heading that names the exercise and its sets"
        raise UsageFault(Fault(where, said, f"the columns are {', '.join(READ)}"))
    formulas = opened_workbook(data, where, values=False)
    faults = [fault for title, _ in tables for fault in _empty_formulas(formulas[title], book[title], where)]
    if faults:
        raise UsageFault(faults)
    for title, lines in tables:
        place = f"{where}: {title}" if len(tables) > 1 else where
        rows = rows_of_lines(lines, place, notes, title if len(tables) > 1 else "")
        found += [(f"{title}, {at}" if len(tables) > 1 else at, row) for at, row in rows]
    for title, _ in sheets:
        if title not in dict(tables):
            notes.add(f"not read: the sheet {title!r}, which has no heading of a week")
    return found


def _lines_of(sheet: Any) -> list[RawLine]:
    """The cells of a sheet line by line."""
    rows = sheet.iter_rows(max_row=min(sheet.max_row, MOST_LINES), max_col=MOST_COLUMNS, values_only=True)
    return [(f"row {number}", [_plain(cell) for cell in cells]) for number, cells in enumerate(rows, 1)]


def _plain(cell: Any) -> Any:
    """A cell's value; a whole number that a spreadsheet holds as 3.0 is 3."""
    return int(cell) if isinstance(cell, float) and cell.is_integer() else cell


def _empty_formulas(sheet: Any, values: Any, where: str) -> list[Fault]:
    """A fault for each formula of which the workbook does not hold the value."""
    return [
        Fault(f"{where}: {sheet.title}, {cell.coordinate}", "is a formula without its value", "write the value itself")
        for row in sheet.iter_rows(max_row=min(sheet.max_row, MOST_LINES), max_col=MOST_COLUMNS)
        for cell in row
        if cell.data_type == "f" and values[cell.coordinate].value is None
    ]
