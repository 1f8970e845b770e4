"""Logs made for the tests: text, workbooks of rows, filled-in workbooks, and what a reading says."""

from __future__ import annotations

import io
import sys
from collections.abc import Callable, Mapping, Sequence
from datetime import date, datetime
from pathlib import Path
from typing import Any

import openpyxl
import pytest

from setwright.catalogue.faults import SetwrightError
from setwright.catalogue.load import load_catalogue
from setwright.solver.foreign.log.log_file import LogFile, read_log
from setwright.solver.log.values import LoggedSession
from setwright.solver.sheets.xlsx import log_keys

sys.path.insert(0, str(Path(__file__).parents[1] / "sheets"))
from handed import handed

CATALOGUE = load_catalogue()
TODAY = date(2026, 6, 1)
Set = tuple[str, float | None, int, int | None]


def read(data: str | bytes, **more: Any) -> LogFile:
    """A log in kg, its file called log.csv."""
    asked = {"unit": "kg", "today": TODAY, **more}
    return read_log(data if isinstance(data, bytes) else data.encode(), "log.csv", CATALOGUE, **asked)


def faults(data: str | bytes, **more: Any) -> list[str]:
    """Every fault of a log that is refused, without the file's name."""
    with pytest.raises(SetwrightError) as error:
        read(data, **more)
    return [str(fault).removeprefix("log.csv: ") for fault in error.value.faults]


def sets(session: LoggedSession) -> list[Set]:
    """(lift, load, repetitions, reserve) of a session's sets."""
    return [(done.exercise, done.load, done.reps, done.rir) for done in session.sets]


def only(data: str | bytes, **more: Any) -> list[Set]:
    """The sets of a log of one session."""
    (session,) = read(data, **more).sessions
    return sets(session)


def one_cell(cell: str, lift: str = "bench press") -> list[Set]:
    """The sets that one cell in a diary's notation says."""
    quoted = cell.replace('"', '""')
    return only(f'date,exercise,done\n2026-01-05,{lift},"{quoted}"\n')


def workbook(sheets: Mapping[str, Sequence[Sequence[Any]]], merged: Sequence[str] = ()) -> bytes:
    """A workbook of rows, some of its cells merged on every sheet."""
    book = openpyxl.Workbook()
    book.remove(book.active)
    for title, rows in sheets.items():
        sheet = book.create_sheet(title)
        for row in rows:
            sheet.append(list(row))
        for cells in merged:
            sheet.merge_cells(cells)
    return saved(book)


def saved(book: Any) -> bytes:
    data = io.BytesIO()
    book.save(data)
    return data.getvalue()


def filled(change: Callable[[Any], None] | None = None) -> bytes:
    """Our own workbook of a fixed week, the first lift of each session done in one set of 20 x 8 from 2026-01-05 on."""
    from setwright.solver.sheets.xlsx.workbook import xlsx_bytes

    book = openpyxl.load_workbook(io.BytesIO(xlsx_bytes(handed())))
    for session, sheet in zip(handed().sessions, book.worksheets[1:-1], strict=True):
        keys, rows = places(sheet)
        at = keys[log_keys.load_key(1)]
        sheet.cell(rows[session.lines[0].exercise], at, 20)
        sheet.cell(rows[session.lines[0].exercise], keys[log_keys.reps_key(1)], 8)
        sheet.cell(rows[session.lines[0].exercise], keys[log_keys.NOTES], "felt easy")
        sheet.cell(rows[log_keys.DATE], at, datetime(2026, 1, 4 + session.number))
        sheet.cell(rows[log_keys.MINUTES], at, 38)
        sheet.cell(rows[log_keys.HARD], at, 7.5)
        sheet.cell(rows[log_keys.REMARKS], at, "went well")
    if change:
        change(book)
    return saved(book)


def places(sheet: Any) -> tuple[dict[str, int], dict[str, int]]:
    """Key -> column, and name of a row -> row, of one session's sheet."""
    keys = {cell.value: cell.column for cell in sheet[1] if cell.value}
    rows = {sheet.cell(row, keys[log_keys.ID]).value: row for row in range(2, sheet.max_row + 1)}
    return keys, {name: row for name, row in rows.items() if name}
