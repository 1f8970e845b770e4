"""What the tables of one file share while their rows are gathered into sessions."""

from __future__ import annotations

from collections.abc import Iterable
from datetime import date
from typing import Any, Final

from setwright.solver.brief.schema import Unit
from setwright.solver.foreign.log.cells.cell_fault import CellFault
from setwright.solver.foreign.log.draft import Draft
from setwright.solver.foreign.log.lift_names import LiftNames
from setwright.solver.foreign.log.row_faults import RowFaults
from setwright.solver.foreign.log.tables.log_columns import LogColumns
from setwright.solver.foreign.log.tables.table import Table
from setwright.solver.foreign.log.tables.units import Units
from setwright.solver.foreign.notes import Notes
from setwright.solver.log.unread import UnreadRow

Key = tuple[date, str]
"""A session's day, and its name or number in the file, empty where none is said."""
APART: Final = 2**40
"""Lines of one table lie below this, so that table x APART + line is one number for both."""


class Gathering:
    """The sessions so far, the faults, and what is left unread, of one file."""

    def __init__(self, where: str, names: LiftNames, unit: Unit, notes: Notes) -> None:
        self.faults, self.names, self.notes = RowFaults(where), names, notes
        self.units = Units(unit)
        self.drafts: dict[Key, Draft] = {}
        self.unread: list[UnreadRow] = []
        self.tables: list[Table] = []

    def place(self, code: int) -> str:
        """Where a row stands that is known by its number."""
        return self.tables[code // APART].place(code % APART)


class Rows:
    """One table of a file: its columns, and how its rows are named where something is amiss with them or left."""

    def __init__(self, file: Gathering, table: Table, columns: LogColumns) -> None:
        file.tables.append(table)
        self.file, self.table, self.columns = file, table, columns
        self.base = (len(file.tables) - 1) * APART

    def fault(self, line: int, name: str, fault: CellFault) -> None:
        """Keep a fault of a row's field."""
        self.fault_at(line, self.columns.name(self.columns.at.get(name)) or name, fault)

    def fault_at(self, line: int, column: str, fault: CellFault) -> None:
        """Keep a fault of a row under a heading."""
        self.file.faults.add(self.table.place(line), fault.said, fault.remedy, column)

    def leave(self, line: int, cells: Iterable[Any], why: str) -> None:
        """Keep cells of a row as unread."""
        text = "; ".join(str(cell) for cell in cells)
        self.file.unread.append(UnreadRow(self.table.place(line), text, why))
