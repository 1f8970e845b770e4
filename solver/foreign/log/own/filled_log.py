"""The sessions of our own filled-in workbook, or of one of its sheets saved as CSV."""

from __future__ import annotations

import io
from collections.abc import Mapping

from pydantic_core import PydanticCustomError

from setwright.catalogue.faults import Fault, UsageFault
from setwright.solver.brief.schema import Unit
from setwright.solver.foreign.filled.filled_cells import MOST_COLUMNS, MOST_ROWS
from setwright.solver.foreign.filled.filled_workbook import DoneSession, read_workbook
from setwright.solver.foreign.log.cells.numbers import hardness
from setwright.solver.foreign.log.cells.repetitions import breaths_of
from setwright.solver.foreign.log.draft import ReadSession
from setwright.solver.foreign.log.lift_names import LiftNames
from setwright.solver.foreign.log.row_faults import RowFaults, capped
from setwright.solver.foreign.log.tables.sessions import check_numbers, note_of
from setwright.solver.foreign.log.tables.table import Table
from setwright.solver.foreign.notes import Notes
from setwright.solver.log.values import LoggedSession, LoggedSet
from setwright.solver.sheets.xlsx import log_keys


def read_filled(
    data: bytes, where: str, names: LiftNames, unit: Unit, said: Mapping[str, str], faults: RowFaults, notes: Notes
) -> list[ReadSession]:
    """The sessions in which something was done; `said` is sheet -> unit. Raises UsageFault with all faulty cells."""
    done = read_workbook(data, where)
    if done.faults:
        raise UsageFault(capped(list(done.faults), where))
    for sheet, other in said.items():
        if other != unit:
            remedy = f"kg and lb are never mixed: read it as {other}, for a client who lifts in {other}"
            faults.add(sheet, f"its loads are in {other}, the log is in {unit}", remedy)
    found = [_session(session, names, unit, faults, notes) for session in done.sessions]
    return [read for read in found if read is not None]


def _session(done: DoneSession, names: LiftNames, unit: Unit, faults: RowFaults, notes: Notes) -> ReadSession | None:
    """One sheet's session; None where nothing was done, or its date is missing, which is a fault."""
    place = f"session {done.number}"
    if done.date is None:
        if done.sets or done.notes or done.minutes is not None:
            faults.add(place, "has sets and no date", f"write it in the row {log_keys.DATE}")
        return None
    if not done.sets and not done.notes and done.minutes is None:
        return None
    exercises = names.catalogue.exercises
    sets: list[LoggedSet] = []
    places: list[str] = []
    ids: dict[str, str] = {}
    for one in done.sets:
        try:
            lift = ids[one.exercise] = names.exercise_id(one.exercise)
        except PydanticCustomError as error:
            told = error.context or {}
            faults.add(one.where, str(told["said"]), str(told["remedy"]))
            continue
        reps = breaths_of(one.reps) if exercises[lift].timed else one.reps
        sets.append(LoggedSet(lift, one.number, reps, one.load))
        places.append(one.where)
    check_numbers(sets, lambda at: places[at], faults, names.catalogue)
    hard, rounded = (None, "") if done.how_hard is None else hardness(done.how_hard)
    if rounded:
        notes.add(rounded, place)
    known = [(ids.get(lift, lift) if ids.get(lift, lift) in exercises else "", words) for lift, words in done.notes]
    session = LoggedSession(
        on=done.date,
        sets=tuple(sets),
        unit=unit,
        session=done.number,
        minutes=done.minutes,
        how_hard=hard,
        note=note_of(sorted(known, key=lambda note: note[0] != ""), names.catalogue),
    )
    return ReadSession(session, place, lambda at: places[at])


def is_key_row(cells: object) -> bool:
    """Whether a line holds the keys of a session's sheet."""
    return isinstance(cells, list) and log_keys.ID in cells and log_keys.load_key(1) in cells


def workbook_of(table: Table, where: str) -> bytes:
    """A session's sheet that was saved as CSV as a workbook again; raises UsageFault where it is longer than one."""
    from openpyxl import Workbook

    book = Workbook()
    sheet = book.active
    assert sheet is not None
    sheet.title = "session"
    for line, cells in table.lines():
        if line > MOST_ROWS or len(cells) > MOST_COLUMNS:
            said = f"is larger than one session's sheet, {MOST_ROWS} rows and {MOST_COLUMNS} columns"
            raise UsageFault(Fault(where, said, "save each sheet by itself"))
        for place, cell in enumerate(cells, 1):
            if cell:
                sheet.cell(line, place, cell).data_type = "s"
    data = io.BytesIO()
    book.save(data)
    return data.getvalue()
