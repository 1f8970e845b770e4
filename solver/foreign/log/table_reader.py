"""The rows of one table gathered into sessions; dates, sessions and lifts hold for the rows below that say none."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from datetime import date, time
from typing import Any, Final

from pydantic_core import PydanticCustomError

from setwright.solver.foreign.day_names import weekday_or_number
from setwright.solver.foreign.log.cell_fault import CellFault
from setwright.solver.foreign.log.dates import EARLIEST, Order, date_of, moment_of, settled_order
from setwright.solver.foreign.log.draft import Draft
from setwright.solver.foreign.log.gathering import Gathering, Key, Rows
from setwright.solver.foreign.log.log_header import OF_A_SESSION, LogColumns
from setwright.solver.foreign.log.row_sets import RowSets, blank
from setwright.solver.foreign.log.session_cells import SessionCells
from setwright.solver.foreign.log.table import Table
from setwright.solver.log.values import LoggedSet

RAMP_UP: Final = frozenset(
    ("w", "warm-up", "warm up", "warmup", "warm-up set", "ramp-up", "ramp up", "ramp-up set", "ramp")
)
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
        self.rows = Rows(file, table, columns)
        self.sets = RowSets(columns, file.notes.add)
        self.order = self._settled(table)
        self.cells = SessionCells(self.rows, self.order)
        self.on, self.session, self.lift = on, "", ""
        self._key: Key | None = None
        self._dates: dict[Any, tuple[date, time | None]] = {}
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
            return "day first"

    def before(self, line: int, cells: Sequence[Any]) -> None:
        """Keep a line above the heading; a date that stands there alone is that of the rows below."""
        lone = [cell for cell in cells if not blank(cell)]
        if lone and not (len(lone) == 1 and self._is_title(lone[0])):
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
        draft = self._draft(line, given) or Draft(EARLIEST, 0)
        lift = ""
        if done:
            lift = self._lift(line, given)
            self._add_sets(line, given, cells, lift, draft)
        self.cells.add(line, given, lift, draft)
        self.cells.leave_columns(line, given, cells)

    def _is_said(self, given: Mapping[str, Any], line: int, cells: Sequence[Any]) -> bool:
        """Whether a row without a set says something of its session; one that does not is kept as unread."""
        if not _OF_A_SESSION.isdisjoint(given) and ("date" in given or self.on is not None):
            return True
        lone = [cell for cell in cells if not blank(cell)]
        title = len(lone) == 1 and self._is_title(lone[0])
        if lone and not title and not self.columns.own:
            self.rows.leave(line, lone, "says no set")
        return False

    def _is_title(self, cell: Any) -> bool:
        """Whether a lone cell is the date of the lines below it, which is then taken."""
        if "date" in self.columns.at:
            return False
        try:
            self.on, _ = date_of(cell, None)
        except CellFault:
            return False
        return True

    def _is_ramp_up(self, given: Mapping[str, Any]) -> bool:
        said = (given.get("type"), given.get("set"))
        return any(isinstance(cell, str) and cell.lower() in RAMP_UP for cell in said)

    def _draft(self, line: int, given: Mapping[str, Any]) -> Draft | None:
        """The draft of a row's session; None where its date was faulted."""
        before, when = self.on, None
        name = str(given["session"]) if "session" in given else ""
        if "date" in given:
            try:
                self.on, when = self._date(given["date"])
            except CellFault as fault:
                self.on = None
                self.rows.fault(line, "date", fault)
                return None
        elif self.columns.own and name and name != self.session:
            self.on = None
        if self.on is None:
            remedy = "write its day" if "date" in self.columns.at else "add a column of dates, or name it by --columns"
            self.rows.fault(line, "date", CellFault("has a set and no date", remedy))
            return None
        self.session = name if name or self.on != before else self.session
        key = (self.on, self.session.lower())
        draft = self.file.drafts.get(key)
        if draft is None:
            draft = self.file.drafts[key] = Draft(self.on, self.rows.base + line)
            self._number(line, draft)
        if key != self._key:
            self.lift = ""
            draft.runs.append(len(draft.sets))
        if when is not None:
            draft.times.setdefault(when, line)
        self._key = key
        return draft

    def _date(self, cell: Any) -> tuple[date, time | None]:
        """A cell's date, worked out once for each text."""
        found = self._dates.get(cell)
        if found is None:
            found = self._dates[cell] = date_of(cell, self.order)
        return found

    def _number(self, line: int, draft: Draft) -> None:
        """Keep the session's number of the week; a name that is none is left unread."""
        number = weekday_or_number(self.session) if self.session else None
        if number and number.isdecimal():
            draft.said["session"] = (int(number), line)
        elif self.session and number is None:
            self.rows.leave(line, [self.session], "is a session's name, which has no place in a log")

    def _lift(self, line: int, given: Mapping[str, Any]) -> str:
        """The id of a row's lift, or of the lift above it; empty where it was faulted."""
        said = given.get("exercise")
        if said is None:
            if not self.lift:
                self.rows.fault(line, "exercise", CellFault("is empty, expected an exercise's name"))
            return self.lift
        try:
            self.lift = self.file.names.exercise_id(str(said))
        except PydanticCustomError as error:
            told = error.context or {}
            self.rows.fault(line, "exercise", CellFault(str(told["said"]), str(told["remedy"])))
            self.lift = ""
        return self.lift

    def _add_sets(self, line: int, given: Mapping[str, Any], cells: Sequence[Any], lift: str, draft: Draft) -> None:
        """Keep the sets of a row."""

        def report(place: int, fault: CellFault) -> None:
            self.rows.fault_at(line, self.columns.name(place), fault)

        exercise = self.file.names.catalogue.exercises.get(lift)
        code = self.rows.base + line
        for done in self.sets.of(given, cells, exercise, report):
            if done.unit:
                self.file.units.cell(done.unit, self.rows.table.place(line))
            ended = None
            if done.ended is not None:
                try:
                    ended = moment_of(done.ended, draft.on, self.order)
                except CellFault as fault:
                    self.rows.fault(line, "set ended", fault)
            draft.add(LoggedSet(lift, done.number, done.reps, done.load, done.rir, done.side, ended), code)
