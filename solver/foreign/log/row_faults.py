"""The faults of a long table: each said once, with its first place and how often it stands, the first of them told."""

from __future__ import annotations

from typing import Final

from setwright.catalogue.faults import Fault, UsageFault
from setwright.solver.sheets.common.json_values import MOST_FAULTS
from setwright.solver.sheets.common.words import counted

MOST_KEPT: Final = 1_000
"""Different faults that are kept; further ones are counted."""


class RowFaults:
    """Keeps faults in the order in which they were met; a fault that is met again is counted."""

    def __init__(self, where: str) -> None:
        self.where = where
        self._met: dict[tuple[str, str, str], tuple[str, int]] = {}
        self._beyond = 0

    def add(self, place: str, said: str, remedy: str = "", column: str = "") -> None:
        """Keep a fault of a place, and of a column in it where one is named."""
        key = (column, said, remedy)
        first, times = self._met.get(key, (place, 0))
        if times or len(self._met) < MOST_KEPT:
            self._met[key] = (first, times + 1)
        else:
            self._beyond += 1

    def __len__(self) -> int:
        return len(self._met) + self._beyond

    def __bool__(self) -> bool:
        return bool(self._met)

    def raise_all(self) -> None:
        """Raise UsageFault where any was kept."""
        if self._met:
            raise UsageFault(capped(self._faults(), self.where, self._beyond))

    def _faults(self) -> list[Fault]:
        found = []
        for (column, said, remedy), (place, times) in self._met.items():
            at = ", ".join(part for part in (place, column) if part)
            where = f"{self.where}: {at}" if at else self.where
            more = f" (and so {counted(times - 1, 'time')} more)" if times > 1 else ""
            found.append(Fault(where, f"{said}{more}", remedy))
        return found


def capped(faults: list[Fault], where: str, beyond: int = 0) -> list[Fault]:
    """The first of many faults, and one that says how many more there are."""
    more = len(faults) - MOST_FAULTS + beyond
    if more <= 0:
        return faults
    return [*faults[:MOST_FAULTS], Fault(where, f"has {counted(more, 'more fault')}", "mend these first")]
