"""A training log of any file, all or nothing: our own workbook, table or document, or any table of sets."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from datetime import date

from setwright.catalogue.entries import Catalogue
from setwright.catalogue.faults import Fault, UsageFault
from setwright.solver.brief.schema import Unit
from setwright.solver.foreign.log.cells.cell_fault import CellFault
from setwright.solver.foreign.log.cells.dates import date_of
from setwright.solver.foreign.log.draft import ReadSession
from setwright.solver.foreign.log.lift_names import LiftNames
from setwright.solver.foreign.log.own.document import read_document
from setwright.solver.foreign.log.own.filled_log import is_key_row, read_filled, workbook_of
from setwright.solver.foreign.log.session_checks import check_sessions
from setwright.solver.foreign.log.tables.gathering import Gathering
from setwright.solver.foreign.log.tables.log_columns import columns_of
from setwright.solver.foreign.log.tables.log_heading import check_asked, is_heading, no_heading
from setwright.solver.foreign.log.tables.sessions import sessions_of
from setwright.solver.foreign.log.tables.table import MOST_BYTES, Table, table_of_text
from setwright.solver.foreign.log.tables.table_reader import read_table
from setwright.solver.foreign.log.tables.workbook_tables import check_cells, is_filled, sheets_of, units_said
from setwright.solver.foreign.notes import Notes
from setwright.solver.foreign.rows.json_rows import looks_like_json
from setwright.solver.foreign.rows.opened_workbook import COMPOUND
from setwright.solver.foreign.rows.raw_rows import texts_of
from setwright.solver.foreign.rows.workbook_lines import PACKAGE
from setwright.solver.log.unread import UnreadRow
from setwright.solver.log.values import LoggedSession


@dataclass(frozen=True)
class LogFile:
    """The sessions of a file by date, what of it was not read, and what was read otherwise than written."""

    sessions: tuple[LoggedSession, ...]
    unread: tuple[UnreadRow, ...] = ()
    notes: tuple[str, ...] = ()


def read_log(
    data: bytes,
    where: str,
    catalogue: Catalogue,
    unit: Unit,
    columns: Mapping[str, str] | None = None,
    accept_near: bool = False,
    today: date | None = None,
) -> LogFile:
    """The sessions of a log whose loads are in `unit` unless its columns say another; `columns` is field -> heading.

    Dates after `today` are faults where it is given. Raises UsageFault with the faults of all rows, and then nothing is
    read; SetwrightError where a workbook is named and openpyxl is not installed.
    """
    said = dict(columns or {})
    check_asked(said, where)
    if len(data) > MOST_BYTES:
        raise UsageFault(Fault(where, "is larger than 50 MB, expected one log", "split the file"))
    notes = Notes()
    names = LiftNames(catalogue, accept_near, notes)
    file = Gathering(where, names, unit, notes)
    unread: tuple[UnreadRow, ...] = ()
    if looks_like_json(data):
        found, unread = read_document(data, where, names, file.faults)
    elif data.startswith((PACKAGE, COMPOUND)):
        found = _of_workbook(data, where, file, unit, said)
    else:
        found = _of_text(data, where, file, unit, said)
    check_sessions(found, today, file.faults)
    file.faults.raise_all()
    sessions = tuple(sorted((read.session for read in found), key=lambda session: session.on))
    return LogFile(sessions, unread or tuple(file.unread), tuple(notes.sentences()))


def _of_workbook(data: bytes, where: str, file: Gathering, unit: Unit, said: Mapping[str, str]) -> list[ReadSession]:
    tables = sheets_of(data, where)
    if is_filled(tables):
        return read_filled(data, where, file.names, unit, units_said(tables), file.faults, file.notes)
    check_cells(data, tables, where, said)
    gathered = [_gathered(table, file, said) for table in tables]
    if not any(gathered):
        lines = [texts_of(cells) for table in tables for _, cells in table.first()]
        raise no_heading(lines, said, where)
    return sessions_of(file)


def _of_text(data: bytes, where: str, file: Gathering, unit: Unit, said: Mapping[str, str]) -> list[ReadSession]:
    table = table_of_text(data, where, file.notes, said)
    if any(is_key_row(cells) for _, cells in table.first()):
        filled = workbook_of(table, where)
        return read_filled(filled, where, file.names, unit, units_said([table]), file.faults, file.notes)
    if not _gathered(table, file, said):
        raise no_heading([texts_of(cells) for _, cells in table.first()], said, where)
    return sessions_of(file)


def _gathered(table: Table, file: Gathering, said: Mapping[str, str]) -> bool:
    """Gather a table's rows; False where it has no heading of a log, and its lines are kept as unread."""
    head = next(((line, cells) for line, cells in table.first() if is_heading(texts_of(cells), said)), None)
    if head is None:
        for line, cells in table.lines():
            text = "; ".join(part for part in texts_of(cells) if part)
            if text:
                file.unread.append(UnreadRow(table.place(line), text, "stands on a sheet without a heading of a log"))
        return False
    try:
        on = date_of(table.sheet, None)[0] if table.sheet else None
    except CellFault:
        on = None
    read_table(file, table, columns_of(texts_of(head[1]), said), head[0], on)
    return True
