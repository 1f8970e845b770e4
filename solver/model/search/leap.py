"""The leap of a longer week: HiGHS's root, on the best columns of all days at once, finds a better start."""

from __future__ import annotations

from collections.abc import Callable

from setwright.solver.model.build import day_sheet
from setwright.solver.model.columns import Board
from setwright.solver.model.engines import highs
from setwright.solver.model.engines.highs import Bounded
from setwright.solver.model.limits import Limits
from setwright.solver.model.search.candidates import Candidates
from setwright.solver.model.search.climb import State

COLUMNS = 320
"""Columns that HiGHS sees: with more, its root alone takes over ten seconds."""


def leap(board: Board, candidates: Candidates, limits: Limits, stopped: Callable[[], bool]) -> frozenset[int] | None:
    """The columns of HiGHS's week after so many nodes; the climb's week is no start for it."""
    most = COLUMNS // len(board.terms.days)
    kept = sorted({j for day in candidates.ranked for j in day[:most]} | candidates.must)
    sheet = day_sheet(board, [candidates.columns[j] for j in kept])
    found = highs.bound(sheet, limits.leap_nodes, limits.seconds, None, stopped)
    return raised(found, kept)


def polish(board: Board, state: State, limits: Limits, stopped: Callable[[], bool]) -> frozenset[int] | None:
    """The columns of the week that HiGHS makes of one at hand with the classes that are in it."""
    columns = state.candidates.columns
    classes = {a.cls for j in state.chosen for a in columns[j].atoms}
    used = {j for j, column in enumerate(columns) if all(a.cls in classes for a in column.atoms)}
    kept = sorted(used | state.candidates.must)
    sheet = day_sheet(board, [columns[j] for j in kept])
    start = [i for i, j in enumerate(kept) if j in state.chosen]
    found = highs.bound(sheet, limits.leap_nodes, limits.seconds, None, stopped, start=start)
    return raised(found, kept)


def raised(found: Bounded, kept: list[int]) -> frozenset[int] | None:
    """The columns in use of those that HiGHS saw."""
    if found.amounts is None:
        return None
    return frozenset(j for j, amount in zip(kept, found.amounts, strict=True) if amount > 0.5)
