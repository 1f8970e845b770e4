"""What rows say beside their sets: the unit, the session's times, minutes, week and notes, and columns not read."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import Any, Final

from setwright.catalogue.faults import shown
from setwright.solver.foreign.log.cells.cell_fault import CellFault
from setwright.solver.foreign.log.cells.dates import Order, moment_of
from setwright.solver.foreign.log.cells.filled_fields import blank
from setwright.solver.foreign.log.cells.numbers import hardness, number_of, unit_of, whole_of
from setwright.solver.foreign.log.draft import Draft
from setwright.solver.foreign.log.tables.gathering import Rows
from setwright.solver.foreign.log.tables.log_columns import OF_A_SESSION
from setwright.solver.sheets.document.progress.log_model import MOST_WEEKS
from setwright.solver.sheets.xlsx.log_keys import MOST_MINUTES

WORKING: Final = frozenset(("working", "working set", "work", "work set", "normal", "straight"))
"""Kinds of a set that say no more than that it is one."""
APART: Final[Mapping[str, str]] = {
    "started": "tell two sessions of a day apart by a column session",
    "ended": "call the column 'set ended' where each set's own end is meant",
}
"""What to do where the rows of one session differ in a field."""
_FIELDS: Final = frozenset((*OF_A_SESSION, "unit"))


class SessionCells:
    """Reads the cells of one table's rows that are about the session."""

    def __init__(self, rows: Rows, order: Order | None) -> None:
        self.rows, self.order = rows, order

    def add(self, line: int, given: Mapping[str, Any], lift: str, draft: Draft) -> None:
        """Keep what a row says of its unit and of its session."""
        if _FIELDS.isdisjoint(given):
            return
        for name, cell in given.items():
            if name not in _FIELDS:
                continue
            try:
                self._add(line, name, cell, lift, draft)
            except CellFault as fault:
                self.rows.fault(line, name, fault)

    def _add(self, line: int, name: str, cell: Any, lift: str, draft: Draft) -> None:
        if name == "unit":
            self.rows.file.units.column(unit_of(cell), self.rows.table.place(line))
        elif name == "note":
            draft.notes.append((lift, str(cell)))
        else:
            value = self._value(name, cell, draft)
            kept, first = draft.said.setdefault(name, (value, line))
            if kept != value:
                place = self.rows.table.place(first)
                said = f"got {shown(str(cell))}, and another in {place} for the same session"
                raise CellFault(said, APART.get(name, "keep one of them"))

    def _value(self, name: str, cell: Any, draft: Draft) -> Any:
        """A value that a row says of its session; raises CellFault."""
        if name in ("started", "ended"):
            return moment_of(cell, draft.on, self.order)
        if name == "week":
            return whole_of(cell, 1, MOST_WEEKS)
        if name == "minutes":
            return number_of(cell, MOST_MINUTES)
        found, note = hardness(cell)
        if note:
            self.rows.file.notes.add(note)
        return found

    def leave_columns(self, line: int, given: Mapping[str, Any], cells: Sequence[Any]) -> None:
        """Keep the cells of a row whose columns are not read, and the kind of a set that is no plain one."""
        columns, kind, wide = self.rows.columns, given.get("type"), len(self.rows.columns.heads)
        if not columns.unread and kind is None and len(cells) <= wide:
            return
        texts = [
            f"{columns.name(place) or 'no heading'}: {cells[place]}"
            for place in (*columns.unread, *range(wide, len(cells)))
            if place < len(cells) and not blank(cells[place])
        ]
        if kind is not None and str(kind).lower() not in WORKING:
            texts.append(f"{columns.name(columns.at['type'])}: {kind}")
        if texts:
            self.rows.leave(line, texts, "stands in columns that are not read")
