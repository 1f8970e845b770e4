"""The leap of a longer week: HiGHS's root, on the best columns of all days at once, finds a better start."""

from __future__ import annotations

from collections.abc import Callable

from setwright.solver.model.build import day_sheet
from setwright.solver.model.columns import Board
from setwright.solver.model.engines import highs
from setwright.solver.model.limits import Limits
from setwright.solver.model.search.candidates import Candidates

COLUMNS = 320
"""Columns that HiGHS sees: with more, its root alone takes over ten seconds."""


def leap(board: Board, candidates: Candidates, limits: Limits, stopped: Callable[[], bool]) -> frozenset[int] | None:
    """The columns of HiGHS's week after so many nodes; the climb's week is no start for it."""
    most = COLUMNS // len(board.terms.days)
    kept = sorted({j for day in candidates.ranked for j in day[:most]} | candidates.must)
    sheet = day_sheet(board, [candidates.columns[j] for j in kept])
    found = highs.bound(sheet, limits.leap_nodes, limits.seconds, None, stopped)
    if found.amounts is None:
        return None
    return frozenset(j for j, amount in zip(kept, found.amounts, strict=True) if amount > 0.5)
