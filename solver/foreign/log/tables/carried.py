"""Date, session and lift of a table's rows; each holds for the rows below that say none."""

from __future__ import annotations

from collections.abc import Mapping
from datetime import date, time
from typing import Any

from pydantic_core import PydanticCustomError

from setwright.solver.foreign.day_names import weekday_or_number
from setwright.solver.foreign.log.cells.cell_fault import CellFault
from setwright.solver.foreign.log.cells.dates import Order, date_of
from setwright.solver.foreign.log.draft import Draft
from setwright.solver.foreign.log.tables.gathering import Key, Rows


class Carried:
    """The date, the session and the lift that hold at the row being read."""

    def __init__(self, rows: Rows, order: Order | None, on: date | None) -> None:
        self.rows, self.order, self.on = rows, order, on
        self.session = self.lift = ""
        self._key: Key | None = None
        self._dates: dict[Any, tuple[date, time | None]] = {}

    def is_title(self, cell: Any, under_date: bool = False) -> bool:
        """Whether a lone cell is the date of the lines below it, which is then taken.

        Where the table has a column of dates, it must stand under it.
        """
        if "date" in self.rows.columns.at and not under_date:
            return False
        try:
            self.on, _ = date_of(cell, self.order)
        except CellFault:
            return False
        return True

    def draft(self, line: int, given: Mapping[str, Any]) -> Draft | None:
        """The draft of a row's session; None where its date was faulted."""
        before = self.on
        name = str(given["session"]) if "session" in given else ""
        try:
            when = self._take_date(given, name)
        except CellFault as fault:
            self.on = None
            self.rows.fault(line, "date", fault)
            return None
        assert self.on is not None
        self.session = name if name or self.on != before else self.session
        key = (self.on, self.session.lower())
        drafts = self.rows.file.drafts
        draft = drafts.get(key)
        if draft is None:
            draft = drafts[key] = Draft(self.on, self.rows.base + line)
            self._number(line, draft)
        if key != self._key:
            self.lift = ""
            draft.runs.append(len(draft.sets))
        if when is not None:
            draft.times.setdefault(when, line)
        self._key = key
        return draft

    def _take_date(self, given: Mapping[str, Any], session: str) -> time | None:
        """Take a row's date where it says one, and give the time beside it; raises CellFault where no date holds.

        On a card's own table a date holds for the rows of its session alone.
        """
        if "date" in given:
            cell = given["date"]
            found = self._dates.get(cell)
            if found is None:
                found = self._dates[cell] = date_of(cell, self.order)
            self.on, when = found
            return when
        if self.on is None or (self.rows.columns.own and session not in ("", self.session)):
            there = "date" in self.rows.columns.at
            remedy = "write its day" if there else "add a column of dates, or say which column is the date"
            raise CellFault("has a set and no date", remedy)
        return None

    def _number(self, line: int, draft: Draft) -> None:
        """Keep the session's number of the week; a name that is none leads the session's note."""
        number = weekday_or_number(self.session) if self.session else None
        if number and number.isdecimal():
            draft.said["session"] = (int(number), line)
        elif self.session and number is None:
            draft.notes.append(("", self.session))

    def lift_of(self, line: int, given: Mapping[str, Any]) -> str:
        """The id of a row's lift, or of the lift above it in its session; empty where it was faulted."""
        said = given.get("exercise")
        if said is None:
            if not self.lift:
                self.rows.fault(line, "exercise", CellFault("is empty, expected an exercise's name"))
            return self.lift
        try:
            self.lift = self.rows.file.names.exercise_id(str(said))
        except PydanticCustomError as error:
            told = error.context or {}
            self.rows.fault(line, "exercise", CellFault(str(told["said"]), str(told["remedy"])))
            self.lift = ""
        return self.lift
