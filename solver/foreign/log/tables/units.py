"""In which unit a file's loads are: kg and pounds are never mixed, and rows that would mix them are named."""

from __future__ import annotations

from typing import Final

from setwright.solver.brief.schema import Unit
from setwright.solver.foreign.log.row_faults import RowFaults
from setwright.solver.foreign.notes import Notes
from setwright.solver.sheets.common.words import counted, listed

MOST_NAMED: Final = 3
REMEDY: Final = "kg and lb are never mixed: convert the loads, or split the file"


class Units:
    """Counts which unit the columns and which the cells of a file say, with the first places of each."""

    def __init__(self, asked: Unit) -> None:
        self.asked = asked
        self._columns: dict[Unit, list[str]] = {}
        self._cells: dict[Unit, list[str]] = {}
        self._times: dict[tuple[bool, Unit], int] = {}

    def column(self, unit: Unit, place: str) -> None:
        """A column or its heading says a unit."""
        self._keep(self._columns, True, unit, place)

    def cell(self, unit: Unit, place: str) -> None:
        """A load is written with a unit."""
        self._keep(self._cells, False, unit, place)

    def _keep(self, held: dict[Unit, list[str]], of_column: bool, unit: Unit, place: str) -> None:
        self._times[of_column, unit] = self._times.get((of_column, unit), 0) + 1
        places = held.setdefault(unit, [])
        if len(places) < MOST_NAMED:
            places.append(place)

    def settled(self, faults: RowFaults, notes: Notes) -> Unit:
        """The one unit of the file: that of its columns, else the one asked for; faults where it has both."""
        if len(self._columns) > 1:
            said = listed(f"{unit} in {self._named(True, unit)}" for unit in sorted(self._columns))
            faults.add("", f"mixes units: {said}", REMEDY)
            return self.asked
        unit = next(iter(self._columns), self.asked)
        for other in sorted(self._cells):
            if other != unit:
                told = f"{self._named(False, other)} is in {other}, the log is in {unit}"
                whole = f"; where the whole file is in {other}, say that its unit is {other}"
                faults.add("", told, REMEDY + ("" if self._columns or len(self._cells) > 1 else whole))
        if unit != self.asked:
            notes.add(f"the loads are in {unit}, as the file says, and not in {self.asked}")
        return unit

    def _named(self, of_column: bool, unit: Unit) -> str:
        places = (self._columns if of_column else self._cells)[unit]
        more = self._times[of_column, unit] - len(places)
        return listed([*places, *([counted(more, "further row")] if more else [])])
