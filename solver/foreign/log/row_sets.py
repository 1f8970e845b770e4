"""The sets that one row of a table says: in numbered columns, as load and repetitions, or in a diary's notation."""

from __future__ import annotations

import re
from collections.abc import Callable, Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from typing import Any, Final

from setwright.catalogue.entries import Exercise
from setwright.catalogue.faults import shown
from setwright.solver.brief.schema import Unit
from setwright.solver.foreign.log.cell_fault import CellFault
from setwright.solver.foreign.log.log_header import LogColumns
from setwright.solver.foreign.log.numbers import (
    MOST_HELD,
    MOST_SETS,
    NOTHING,
    breaths_of,
    load_of,
    reps_of,
    reserve_of,
    side_of,
    whole_of,
)
from setwright.solver.foreign.log.set_text import EXPECTED, SetText, is_notation, sets_of
from setwright.solver.log.values import Side

Report = Callable[[int, CellFault], None]
"""Told of a fault and of the place of its column."""
DONE: Final = frozenset(("done", "load", "reps", "set", "sets"))
"""Fields of which one at least is filled where something was done."""
_OF_A_ROW: Final = ("done", "load", "reps", "set", "sets", "rir", "rpe", "side")
LOADLESS: Final = ("bodyweight", "band")
"""Kinds of load of which repetitions alone are a set."""
MOST_KEPT: Final = 20_000
_MARKS: Final = "/;|"
_PARTS: Final = re.compile(r"\s*[/;|]\s*")


@dataclass(frozen=True)
class RowSet:
    """One set of a row; `number` 0 where the row says none, `ended` the cell of its end."""

    reps: int
    load: float | None
    unit: Unit | None
    rir: int | None
    side: Side | None
    number: int = 0
    ended: Any = None


def blank(cell: Any) -> bool:
    """Whether a cell, without the blanks around it, holds nothing."""
    return cell is None or cell == ""


class RowSets:
    """Reads the sets of rows by one table's columns; each distinct cell is read once."""

    def __init__(self, columns: LogColumns, note: Callable[[str], None]) -> None:
        self.columns, self.note = columns, note
        self._kept: dict[Any, Any] = {}
        self._rows: dict[Any, tuple[RowSet, ...]] = {}
        shared = () if columns.own else ("load", "rir", "rpe", "side")
        self._beside = {name: columns.at[name] for name in shared if name in columns.at}
        self._places = [p for fields in columns.numbered.values() for p in fields.values()]

    def any_done(self, given: Mapping[str, Any], cells: Sequence[Any]) -> bool:
        """Whether a row has something in a column of what was done; `given` holds its filled fields."""
        if not self.columns.numbered:
            return not DONE.isdisjoint(given)
        wide = len(cells)
        return any(place < wide and not blank(cells[place]) for place in self._places)

    def of(
        self, given: Mapping[str, Any], cells: Sequence[Any], lift: Exercise | None, report: Report
    ) -> Iterator[RowSet]:
        """The sets of a row in order, of a lift or of one that is not known; what is wrong is reported and left out."""
        if not self.columns.numbered:
            yield from self._of_row(given, lift, report)
            return
        wide = len(cells)
        beside = {name: given[name] for name in self._beside if name in given}
        for number, fields in sorted(self.columns.numbered.items()):
            filled = {name: cells[p] for name, p in fields.items() if p < wide and not blank(cells[p])}
            if filled:
                at = {**self._beside, **fields}
                for done in self._of_fields({**beside, **filled}, at, lift, report):
                    yield replace(done, number=number, ended=filled.get("set ended"))

    def _of_row(self, given: Mapping[str, Any], lift: Exercise | None, report: Report) -> Iterable[RowSet]:
        """The sets of a row without numbered columns, kept for the next row that says the same."""
        key = (lift and lift.timed, lift and lift.load in LOADLESS, *map(given.get, _OF_A_ROW))
        found = self._rows.get(key)
        if found is None:
            faults: list[tuple[int, CellFault]] = []
            found = tuple(self._of_fields(given, self.columns.at, lift, lambda *fault: faults.append(fault)))
            for fault in faults:
                report(*fault)
            if not faults and len(self._rows) < MOST_KEPT:
                self._rows[key] = found
        return (replace(done, ended=given["set ended"]) for done in found) if "set ended" in given else found

    def _of_fields(
        self, given: Mapping[str, Any], at: Mapping[str, int], lift: Exercise | None, report: Report
    ) -> Iterator[RowSet]:
        """The sets of one group of columns."""
        notation = next((n for n in ("done", "reps", "load", "set", "sets") if self._is_sets(n, given)), None)
        sets = self._typed(notation, given, at, lift, report) if notation else self._plain(given, at, lift, report)
        left_in = "rir" if "rir" in given else "rpe"
        lefts = self._each(left_in, given, at, report, reserve_of, left_in == "rpe") if left_in in given else []
        side = self._one("side", given, at, report, side_of)
        number = self._one("set", given, at, report, whole_of, 1, MOST_SETS) if notation != "set" else None
        if len(lefts) > 1 and len(lefts) != len(sets):
            said = f"has {len(lefts)} numbers for {len(sets)} sets"
            report(at[left_in], CellFault(said, "write one for each set, or one for all"))
            return
        for place, done in enumerate(sets):
            rir, note = lefts[place % len(lefts)] if lefts else (done.rir, done.note)
            if note:
                self.note(note)
            own = (number + place) if number else 0
            yield RowSet(done.reps, done.load, done.unit, rir, side, own)

    def _is_sets(self, name: str, given: Mapping[str, Any]) -> bool:
        """Whether a column's cell holds sets in notation: always in `done`, elsewhere where it looks so."""
        return name in given and (name == "done" or is_notation(given[name]))

    def _typed(
        self, name: str, given: Mapping[str, Any], at: Mapping[str, int], lift: Exercise | None, report: Report
    ) -> list[SetText]:
        """The sets of a cell in notation; a load beside it goes with repetitions that have none."""
        found = self._read(name, given[name], at[name], report, sets_of)
        load, unit = (None, None)
        if "load" in given and name != "load":
            load, unit = self._read("load", given["load"], at["load"], report, load_of) or (None, None)
        sets = []
        for done in found or ():
            loadless = not done.weighted
            if loadless and "load" not in given and lift and lift.load not in LOADLESS:
                report(at[name], CellFault(f"got {shown(given[name])}, {EXPECTED}"))
                return []
            reps = breaths_of(done.reps) if lift and lift.timed else done.reps
            if done.reps > MOST_HELD:
                report(at[name], CellFault(f"got {shown(given[name])}, expected at most {MOST_HELD} s"))
            one = (load, unit) if loadless else (done.load, done.unit)
            sets.append(SetText(reps, *one, done.rir, True, done.note))
        return sets

    def _plain(
        self, given: Mapping[str, Any], at: Mapping[str, int], lift: Exercise | None, report: Report
    ) -> list[SetText]:
        """The sets of a load, repetitions and a number of sets in columns of their own."""
        if "reps" not in given:
            first = next((name for name in ("load", "rir", "rpe", "sets", "set") if name in given), None)
            if first:
                what = "a load" if first == "load" else shown(given[first])
                report(at.get("reps", at[first]), CellFault(f"{what} without repetitions", "write how many were done"))
            return []
        timed = lift is not None and lift.timed
        reps = self._read(f"reps {timed}", given["reps"], at["reps"], report, reps_of, timed) or ()
        loads = self._each("load", given, at, report, load_of) if "load" in given else [(None, None)]
        times = self._one("sets", given, at, report, whole_of, 1, MOST_SETS)
        wanted = len(reps) if len(reps) > 1 else times or max(len(loads), 1)
        if reps and (times not in (None, wanted) or len(loads) not in (0, 1, wanted)):
            said = f"has {len(reps)} numbers of repetitions, {len(loads)} loads and {times or len(reps)} sets"
            report(at["reps"], CellFault(said, "write one for each set, or one for all"))
            return []
        if not reps or not loads:
            return []
        return [SetText(reps[n % len(reps)], *loads[n % len(loads)]) for n in range(wanted)]

    def _each(
        self,
        name: str,
        given: Mapping[str, Any],
        at: Mapping[str, int],
        report: Report,
        reader: Callable[..., Any],
        *more: Any,
    ) -> list[Any]:
        """What each part of a cell such as 80/82.5/85 says; nothing where one was faulted."""
        cell = given[name]
        several = isinstance(cell, str) and cell.lower() not in NOTHING and any(mark in cell for mark in _MARKS)
        parts = _PARTS.split(cell) if several else [cell]
        found = [self._read(name, part, at[name], report, reader, *more) for part in parts]
        return [] if any(part is None for part in found) else found

    def _one(
        self,
        name: str,
        given: Mapping[str, Any],
        at: Mapping[str, int],
        report: Report,
        reader: Callable[..., Any],
        *more: Any,
    ) -> Any:
        """What a cell says; None where it is empty or was faulted."""
        return self._read(name, given[name], at[name], report, reader, *more) if name in given else None

    def _read(
        self, kind: str, cell: Any, place: int, report: Report, reader: Callable[..., Any], *more: Any
    ) -> Any:
        """A cell's value, kept for the next cell that says the same; None where it was faulted."""
        key = (kind, type(cell), cell)
        found = self._kept.get(key)
        if found is None:
            if len(self._kept) >= MOST_KEPT:
                self._kept.clear()
            try:
                found = reader(cell, *more)
            except CellFault as fault:
                found = fault
            self._kept[key] = found
        if isinstance(found, CellFault):
            report(place, found)
            return None
        return found
