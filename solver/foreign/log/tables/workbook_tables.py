"""The tables of sets in a workbook, sheet by sheet; its own filled-in sheets are known by their keys."""

from __future__ import annotations

import io
import re
import zipfile
from collections.abc import Iterator, Mapping, Sequence
from typing import Any, Final

from setwright.catalogue.faults import Fault, UsageFault
from setwright.solver.foreign.filled.filled_cells import MOST_ROWS
from setwright.solver.foreign.log.row_faults import capped
from setwright.solver.foreign.log.tables.log_columns import columns_of
from setwright.solver.foreign.log.tables.log_heading import is_heading
from setwright.solver.foreign.log.tables.table import Line, Table, check_size
from setwright.solver.foreign.rows.opened_workbook import opened_workbook
from setwright.solver.foreign.rows.raw_rows import texts_of
from setwright.solver.sheets.common.sanitise import one_line
from setwright.solver.sheets.xlsx import log_keys

WHAT: Final = "one log"
_FORMULA: Final = re.compile(rb"<(?:\w+:)?f[ >/]")
_MERGED: Final = re.compile(rb"<(?:\w+:)?mergeCell ")


def sheets_of(data: bytes, where: str) -> list[Table]:
    """The sheets of a workbook as tables whose rows are read one by one; raises UsageFault where it is none."""
    book = opened_workbook(data, where, row_by_row=True, what=WHAT)
    return [_table(sheet, where) for sheet in book.worksheets]


def _table(sheet: Any, where: str) -> Table:
    """A sheet's rows, parsed once and kept after they were gone through to the end: parsing takes most of the time."""
    kept: list[Line] = []
    whole: list[bool] = []

    def lines() -> Iterator[Line]:
        if whole:
            yield from kept
            return
        kept.clear()
        try:
            for number, cells in enumerate(_rows(sheet, values_only=True), 1):
                line = number, _plain_cells(cells)
                check_size(number - 1, line[1], where)
                kept.append(line)
                yield line
            whole.append(True)
        except UsageFault:
            raise
        except Exception as error:  # whatever a broken sheet makes the library raise is one fault
            said = f"cannot be read ({type(error).__name__})"
            raise UsageFault(Fault(f"{where}: {one_line(sheet.title)}", said, "save it again as xlsx")) from None

    return Table(lines, one_line(sheet.title), "row")


def _rows(sheet: Any, values_only: bool) -> Iterator[Sequence[Any]]:
    """The rows of a sheet to the last that is there, whatever size the file says that it has."""
    sheet.reset_dimensions()
    return sheet.iter_rows(values_only=values_only)  # type: ignore[no-any-return]


def _plain_cells(cells: Sequence[Any]) -> tuple[Any, ...]:
    """The values of a row without the empty cells at its end; a tuple of them is no work for the garbage collector."""
    found = [_plain(cell) for cell in cells]
    while found and (found[-1] is None or found[-1] == ""):
        found.pop()
    return tuple(found)


def _plain(cell: Any) -> Any:
    """A cell's value; a whole number that a spreadsheet holds as 3.0 is 3."""
    if isinstance(cell, str):
        return cell.strip()
    if isinstance(cell, bool):
        return str(cell).upper()
    return int(cell) if isinstance(cell, float) and cell.is_integer() else cell


def is_filled(tables: list[Table]) -> bool:
    """Whether a workbook is a filled-in one of our own: a sheet holds the key of the column of names."""
    return any(log_keys.ID in cells for table in tables for _, cells in _first(table))


def units_said(tables: list[Table]) -> dict[str, str]:
    """Sheet -> kg or lb, as the heading over the loads of a filled-in sheet says it."""
    found: dict[str, str] = {}
    for table in tables:
        column = None
        for _, cells in _first(table):
            if log_keys.load_key(1) in cells:
                column = list(cells).index(log_keys.load_key(1))
            elif column is not None and column < len(cells) and cells[column] in ("kg", "lb"):
                found.setdefault(table.sheet, cells[column])
    return found


def _first(table: Table) -> list[Line]:
    return [line for line, _ in zip(table.lines(), range(MOST_ROWS), strict=False)]


def check_cells(data: bytes, tables: list[Table], where: str, columns: Mapping[str, str]) -> None:
    """Raise UsageFault with each formula that has no value, and each merged cell over what was done in several rows."""
    formulas = merged = False
    with zipfile.ZipFile(io.BytesIO(data)) as package:
        for name in package.namelist():
            sheet = package.read(name) if name.startswith("xl/worksheets/") else b""
            formulas = formulas or _FORMULA.search(sheet) is not None
            merged = merged or _MERGED.search(sheet) is not None
    faults = _formulas(data, tables, where) if formulas else []
    faults += _merged(data, tables, where, columns) if merged else []
    if faults:
        raise UsageFault(capped(faults, where))


def _formulas(data: bytes, tables: list[Table], where: str) -> list[Fault]:
    book = opened_workbook(data, where, values=False, row_by_row=True, what=WHAT)
    faults = []
    for table, sheet in zip(tables, book.worksheets, strict=True):
        for cells, (_, values) in zip(_rows(sheet, values_only=False), table.lines(), strict=False):
            faults += [
                Fault(f"{where}: {table.sheet}, {cell.coordinate}", "is a formula without its value", "write the value")
                for place, cell in enumerate(cells)
                if cell.data_type == "f" and (place >= len(values) or values[place] is None)
            ]
    return faults


def _merged(data: bytes, tables: list[Table], where: str, columns: Mapping[str, str]) -> list[Fault]:
    """A fault for each merged cell over several rows, unless it stands under the date, the session or the lift."""
    book = opened_workbook(data, where, what=WHAT)
    faults = []
    for table, sheet in zip(tables, book.worksheets, strict=True):
        head = next(((n, c) for n, c in table.first() if is_heading(texts_of(c), columns)), None)
        if head is None:
            continue
        found = columns_of(texts_of(head[1]), columns)
        held = {found.at[name] for name in ("date", "session", "exercise") if name in found.at}
        for area in sheet.merged_cells.ranges:
            tall = area.max_row > area.min_row and area.max_row > head[0]
            wide = area.max_col > area.min_col and area.min_row > head[0] and found.at.get("exercise", 0) < area.max_col
            if (tall and not set(range(area.min_col - 1, area.max_col)) <= held) or (tall and wide):
                said = "is merged over several rows, so that it is not known whose it is"
                faults.append(Fault(f"{where}: {table.sheet}, {area.coord}", said, "unmerge it, and fill each row"))
    return faults
