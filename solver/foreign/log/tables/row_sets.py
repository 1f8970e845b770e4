"""The sets that one row of a table says, in numbered columns or in one group of columns."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from typing import Any, Final

from setwright.catalogue.entries import Exercise
from setwright.solver.brief.schema import Unit
from setwright.solver.foreign.log.cells.cell_fault import CellFault
from setwright.solver.foreign.log.cells.field_sets import counted_sets, notation_in, typed_sets
from setwright.solver.foreign.log.cells.filled_fields import MOST_KEPT, FilledFields, Report, blank
from setwright.solver.foreign.log.cells.numbers import reserve_of, side_of, whole_of
from setwright.solver.foreign.log.tables.log_columns import LogColumns
from setwright.solver.log.values import Side
from setwright.solver.sheets.document.progress.log_model import MOST_SETS

DONE: Final = frozenset(("done", "load", "reps", "sets x reps"))
"""Fields of which one at least is filled where something was done."""
_BESIDE: Final = ("load", "rir", "rpe", "side")
"""Fields that hold for all numbered sets of a row, in a table that is no card's."""
_OF_A_ROW: Final = ("done", "load", "reps", "set", "sets", "sets x reps", "rir", "rpe", "side")


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


class RowSets:
    """Reads the sets of rows by one table's columns; a row that says what an earlier one said is not read again."""

    def __init__(self, columns: LogColumns, note: Callable[[str], None]) -> None:
        self.columns, self.note = columns, note
        self._kept: dict[Any, Any] = {}
        self._rows: dict[Any, tuple[RowSet, ...]] = {}
        self._beside = {name: columns.at[name] for name in _BESIDE if name in columns.at and not columns.own}
        self._places = [p for fields in columns.numbered.values() for p in fields.values()]

    def any_done(self, given: Mapping[str, Any], cells: Sequence[Any]) -> bool:
        """Whether a row has something in a column of what was done; `given` holds its filled fields."""
        if not self.columns.numbered:
            return not DONE.isdisjoint(given) or notation_in(given) is not None
        wide = len(cells)
        return any(place < wide and not blank(cells[place]) for place in self._places)

    def of(
        self, given: Mapping[str, Any], cells: Sequence[Any], lift: Exercise | None, report: Report
    ) -> Iterable[RowSet]:
        """The sets of a row in order, of a lift or of one that is not known; what is wrong is reported and left out."""
        return self._numbered(given, cells, lift, report) if self.columns.numbered else self._row(given, lift, report)

    def _numbered(
        self, given: Mapping[str, Any], cells: Sequence[Any], lift: Exercise | None, report: Report
    ) -> Iterator[RowSet]:
        """The sets of the numbered columns, each with the number in its headings."""
        wide = len(cells)
        beside = {name: given[name] for name in self._beside if name in given}
        for number, places in sorted(self.columns.numbered.items()):
            filled = {name: cells[p] for name, p in places.items() if p < wide and not blank(cells[p])}
            if not filled:
                continue
            fields = FilledFields({**beside, **filled}, {**self._beside, **places}, report, self._kept, single=True)
            found = list(self._group(fields, lift))
            if len(found) > 1:
                first = next(iter(filled))
                fields.fault(first, f"has {len(found)} sets, expected set {number} alone", "write one in each column")
            for done in found[:1]:
                yield replace(done, number=number, ended=filled.get("set ended"))

    def _row(self, given: Mapping[str, Any], lift: Exercise | None, report: Report) -> Iterable[RowSet]:
        """The sets of a row without numbered columns."""
        key = (lift and lift.timed, lift and not lift.has_load, *map(given.get, _OF_A_ROW))
        found = self._rows.get(key)
        if found is None:
            faults: list[tuple[int, CellFault]] = []
            fields = FilledFields(given, self.columns.at, lambda *fault: faults.append(fault), self._kept)
            found = tuple(self._group(fields, lift))
            for fault in faults:
                report(*fault)
            if not faults and len(self._rows) < MOST_KEPT:
                self._rows[key] = found
        return (replace(done, ended=given["set ended"]) for done in found) if "set ended" in given else found

    def _group(self, fields: FilledFields, lift: Exercise | None) -> Iterator[RowSet]:
        """The sets of one group of columns, with what was left in reserve, the side and the number."""
        given = fields.given
        notation = notation_in(given)
        sets = typed_sets(notation, fields, lift) if notation else counted_sets(fields, lift)
        name = "rir" if "rir" in given else "rpe"
        lefts = fields.each(name, reserve_of, name == "rpe") if name in given else []
        side = fields.one("side", side_of)
        number = None if notation == "set" else fields.one("set", whole_of, 1, MOST_SETS)
        if len(lefts) > 1 and len(lefts) != len(sets):
            fields.fault(
                name, f"has {len(lefts)} numbers for {len(sets)} sets", "write one for each set, or one for all"
            )
            return
        for place, done in enumerate(sets):
            rir, note = lefts[place % len(lefts)] if lefts else (done.rir, done.note)
            if note:
                self.note(note)
            yield RowSet(done.reps, done.load, done.unit, rir, side, number + place if number else 0)
