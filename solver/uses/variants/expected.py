"""How long a run may take: measured seconds of one cell by days and search, spread over the workers."""

from __future__ import annotations

import json
from collections.abc import Iterable, Mapping
from types import MappingProxyType

from setwright.solver.uses.variants.matrix import Cell, Matrix

SECONDS: Mapping[str, tuple[float, ...]] = MappingProxyType(
    {
        "quick": (2.0, 3.0, 4.0, 8.0, 11.0, 14.0, 17.0),
        "normal": (4.0, 12.0, 14.0, 27.0, 33.0, 40.0, 50.0),
        "thorough": (8.0, 40.0, 60.0, 200.0, 240.0, 280.0, 320.0),
    }
)
"""Seconds of one processor for a cell of 1 to 7 days (see docs/variants.md; longer ones and thorough are estimates)."""
EXTENDING = 1.5
"""What settling near a shorter variant makes of a cell's time (measured likewise)."""


def seconds_of(cell: Cell, search: str) -> float:
    """One processor's seconds for one cell."""
    days = len(json.loads(cell.brief)["days"])
    return SECONDS[search][days - 1] * (1.0 if cell.extends is None else EXTENDING)


def expected_seconds(matrix: Matrix, places: Iterable[int], search: str, workers: int) -> float:
    """The wall time: all work over the workers, but no less than the longest chain."""
    wanted = set(places)
    chains = [sum(seconds_of(matrix.cells[p], search) for p in chain if p in wanted) for chain in matrix.chains]
    return max(sum(chains) / workers, max(chains, default=0.0))
