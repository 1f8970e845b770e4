"""The filled cells of one group of a row's columns, read by field; each distinct cell is read once in a table."""

from __future__ import annotations

import re
from collections.abc import Callable, Mapping
from typing import Any, Final

from setwright.solver.foreign.log.cells.cell_fault import CellFault
from setwright.solver.foreign.log.cells.numbers import NOTHING

Report = Callable[[int, CellFault], None]
"""Told of a fault and of the place of its column."""
MOST_KEPT: Final = 20_000
"""Cells of one table whose values are kept."""
_MARKS: Final = "/;|"
_PARTS: Final = re.compile(r"\s*[/;|]\s*")


def blank(cell: Any) -> bool:
    """Whether a cell, without the blanks around it, holds nothing."""
    return cell is None or cell == ""


class FilledFields:
    """Field -> cell, of the cells that are filled; what is wrong with one is reported under its column."""

    def __init__(
        self,
        given: Mapping[str, Any],
        at: Mapping[str, int],
        report: Report,
        kept: dict[Any, Any],
        single: bool = False,
    ) -> None:
        """`single` where the columns are those of one set."""
        self.given, self.at, self.report, self.kept, self.single = given, at, report, kept, single

    def fault(self, name: str, said: str, remedy: str = "") -> None:
        """Report a fault of a field."""
        self.report(self.at[name], CellFault(said, remedy))

    def one(self, name: str, reader: Callable[..., Any], *more: Any) -> Any:
        """What a field's cell says; None where it is empty or was faulted."""
        return self._read(name, self.given[name], reader, *more) if name in self.given else None

    def each(self, name: str, reader: Callable[..., Any], *more: Any) -> list[Any]:
        """What each part of a cell such as 80/82.5/85 says; nothing where one was faulted."""
        cell = self.given[name]
        several = isinstance(cell, str) and cell.lower() not in NOTHING and any(mark in cell for mark in _MARKS)
        parts = _PARTS.split(cell) if several else [cell]
        found = [self._read(name, part, reader, *more) for part in parts]
        return [] if any(part is None for part in found) else found

    def _read(self, name: str, cell: Any, reader: Callable[..., Any], *more: Any) -> Any:
        """A cell's value, kept for the next cell that says the same; None where it was faulted."""
        key = (name, type(cell), cell, more)
        found = self.kept.get(key)
        if found is None:
            if len(self.kept) >= MOST_KEPT:
                self.kept.clear()
            try:
                found = reader(cell, *more)
            except CellFault as fault:
                found = fault
            self.kept[key] = found
        if isinstance(found, CellFault):
            self.report(self.at[name], found)
            return None
        return found
