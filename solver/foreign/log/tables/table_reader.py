"""The rows of one table gathered into sessions."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from datetime import date
from typing import Any, Final

from setwright.solver.foreign.log.cells.cell_fault import CellFault
from setwright.solver.foreign.log.cells.dates import EARLIEST, Order, moment_of, settled_order
from setwright.solver.foreign.log.cells.filled_fields import blank
from setwright.solver.foreign.log.draft import Draft
from setwright.solver.foreign.log.tables.carried import Carried
from setwright.solver.foreign.log.tables.gathering import Gathering, Rows
from setwright.solver.foreign.log.tables.log_columns import OF_A_SESSION, LogColumns
from setwright.solver.foreign.log.tables.row_sets import RowSets
from setwright.solver.foreign.log.tables.session_cells import SessionCells
from setwright.solver.foreign.log.tables.table import Table
from setwright.solver.log.values import LoggedSet

RAMP_UP: Final = frozenset(
    ("w", "warm-up", "warm up", "warmup", "warm-up set", "ramp-up", "ramp up", "ramp-up set", "ramp")
)
COUNTING: Final = 3
"""Rows of one lift whose numbers of sets count up from 1 to here number the sets."""
_OF_A_SESSION: Final = frozenset(OF_A_SESSION)


def read_table(file: Gathering, table: Table, columns: LogColumns, heading: int, on: date | None) -> None:
    """Gather the rows of a table whose heading is on a line; `on` is the day of rows above which no date stands."""
    reader = TableReader(file, table, columns, on)
    for line, cells in table.lines():
        if line < heading:
            reader.before(line, cells)
        elif line > heading:
            reader.row(line, cells)


class TableReader:
    """Reads one table row by row into the drafts of its file."""

    def __init__(self, file: Gathering, table: Table, columns: LogColumns, on: date | None) -> None:
        self.file, self.columns = file, columns
        self.order = self._settled(table)
        self.rows = Rows(file, table, columns)
        self.carried = Carried(self.rows, self.order, on)
        self.sets = RowSets(columns, file.notes.add)
        self.cells = SessionCells(self.rows, self.order)
        self._counted: dict[tuple[int, str], int] = {}
        if columns.unit:
            file.units.column(columns.unit, f"{table.sheet}, the heading" if table.sheet else "the heading")

    def _settled(self, table: Table) -> Order | None:
        """The order of day and month in the column of dates."""
        place = self.columns.at.get("date")
        if place is None:
            return None
        try:
            return settled_order(cells[place] for _, cells in table.lines() if place < len(cells))
        except CellFault as fault:
            self.file.faults.add(table.sheet, fault.said, fault.remedy, self.columns.name(place))
            return "either"

    def before(self, line: int, cells: Sequence[Any]) -> None:
        """Keep a line above the heading; a date that stands there alone is that of the rows below."""
        lone = [cell for cell in cells if not blank(cell)]
        if lone and not (len(lone) == 1 and self.carried.is_title(lone[0])):
            self.rows.leave(line, lone, "stands above the heading")

    def row(self, line: int, cells: Sequence[Any]) -> None:
        """Read one row below the heading."""
        wide = len(cells)
        given = {name: cells[p] for name, p in self.columns.at.items() if p < wide and not blank(cells[p])}
        done = self.sets.any_done(given, cells)
        if not done and not self._is_said(given, line, cells):
            return
        if given.get("exercise") == self.columns.heads[self.columns.at["exercise"]]:
            return
        if done and self._is_ramp_up(given):
            self.rows.leave(line, [cell for cell in cells if not blank(cell)], "a ramp-up set is not logged")
            return
        draft = self.carried.draft(line, given) or Draft(EARLIEST, 0)
        lift = ""
        if done:
            lift = self.carried.lift_of(line, given)
            self._add_sets(line, given, cells, lift, draft)
            self._check_counts(line, given, (draft.first, lift))
        self.cells.add(line, given, lift, draft)
        self.cells.leave_columns(line, given, cells)

    def _is_said(self, given: Mapping[str, Any], line: int, cells: Sequence[Any]) -> bool:
        """Whether a row without a set says something of its session; one that does not is kept as unread."""
        if not _OF_A_SESSION.isdisjoint(given) and ("date" in given or self.carried.on is not None):
            return True
        lone = [cell for cell in cells if not blank(cell)]
        title = len(lone) == 1 and self.carried.is_title(lone[0], "date" in given)
        if lone and not title and not self.columns.own:
            self.rows.leave(line, lone, "says no set")
        return False

    def _is_ramp_up(self, given: Mapping[str, Any]) -> bool:
        said = (given.get("type"), given.get("set"))
        return any(isinstance(cell, str) and cell.lower() in RAMP_UP for cell in said)

    def _check_counts(self, line: int, given: Mapping[str, Any], of: tuple[int, str]) -> None:
        """Refuse numbers of sets that count 1, 2, 3 down the rows of one lift: they are the sets' own numbers."""
        if "sets" not in given:
            return
        number = str(given["sets"])
        before = self._counted.get(of, 0)
        self._counted[of] = before + 1 if number == str(before + 1) else -1
        if self._counted[of] == COUNTING:
            said = "counts 1, 2, 3 down the rows of one lift, expected how many sets a row stands for"
            heading = self.columns.name(self.columns.at["sets"])
            self.rows.fault(line, "sets", CellFault(said, f"say that the column {heading} is the set's number"))

    def _add_sets(self, line: int, given: Mapping[str, Any], cells: Sequence[Any], lift: str, draft: Draft) -> None:
        """Keep the sets of a row; those of a lift that is not known are read for their faults."""

        def report(place: int, fault: CellFault) -> None:
            self.rows.fault_at(line, self.columns.name(place), fault)

        code = self.rows.base + line
        for done in self.sets.of(given, cells, self.file.names.catalogue.exercises.get(lift), report):
            if done.unit:
                self.file.units.cell(done.unit, self.rows.table.place(line))
            ended = None
            if done.ended is not None:
                try:
                    ended = moment_of(done.ended, draft.on, self.order)
                except CellFault as fault:
                    self.rows.fault(line, "set ended", fault)
            if lift:
                draft.add(LoggedSet(lift, done.number, done.reps, done.load, done.rir, done.side, ended), code)
