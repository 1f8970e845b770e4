"""Settling a short week: columns that cannot be in a better week are closed, and HiGHS branches on the rest."""

from __future__ import annotations

import math
from collections.abc import Callable
from dataclasses import dataclass

from setwright.solver.model.build import all_day_columns, day_sheet
from setwright.solver.model.columns import Board, Column
from setwright.solver.model.engines import highs
from setwright.solver.model.engines.highs import Relaxed
from setwright.solver.model.limits import SHORT_DAYS, Limits
from setwright.solver.model.search.bounding import Bound
from setwright.solver.model.search.candidates import Candidates, pinned_column
from setwright.solver.model.search.climb import Climb, State
from setwright.solver.model.sheet import Sheet

MOST_COLUMNS = 20_000
MOST_LEFT = 2_700
"""Columns that HiGHS branches on; what is left out bounds what it could add."""
USUAL = 2_000
"""Columns left at which the limit's nodes are what they say; fewer columns, whose nodes are cheaper, get more."""
MOST_TIMES = 4


@dataclass(frozen=True)
class Daily:
    """Every column of a week on its days, and the linear relaxation over them."""

    sheet: Sheet
    relaxed: Relaxed


@dataclass(frozen=True)
class Settled:
    """What HiGHS made of a week: the columns it branched on, those in its best week, and whether it is proved."""

    core: Sheet
    left: tuple[tuple[Column, float], ...]
    chosen: frozenset[int] | None
    closed: bool


def daily(board: Board) -> Daily | None:
    """All columns of a short week with their relaxation; None for a longer week or one of too many columns."""
    if len(board.terms.days) > SHORT_DAYS:
        return None
    columns = all_day_columns(board)
    if len(columns) > MOST_COLUMNS:
        return None
    sheet = day_sheet(board, columns)
    relaxed = highs.relax(sheet)
    return Daily(sheet, relaxed) if math.isfinite(relaxed.value) else None


def settle(
    board: Board, whole: Daily, state: State, limits: Limits, bound: Bound, stopped: Callable[[], bool]
) -> Settled:
    """Branch from a week at hand on the columns that may be in a better one, and lower the bound by it."""
    best, relaxed = state.best, whole.relaxed
    # A column whose reduced cost spans the gap between relaxation and best week is in no better week.
    floor = best.score_units - highs.outward(relaxed.value)
    used = {state.sheet.columns[j] for j in state.chosen}
    able = [(c, r) for c, r in zip(whole.sheet.columns, relaxed.reduced, strict=False) if r >= floor]
    able.sort(key=lambda found: -found[1])
    worth = dict(able[:MOST_LEFT])
    worth |= {
        c: r for c, r in zip(whole.sheet.columns, relaxed.reduced, strict=False) if c in used or pinned_column(board, c)
    }
    left = tuple((c, worth[c]) for c in whole.sheet.columns if c in worth)
    core = day_sheet(board, [c for c, _ in left])
    nodes = round(limits.settle_nodes * min(MOST_TIMES, max(1.0, USUAL / max(1, len(left)))))
    least = float(best.score_units)
    if len(able) > MOST_LEFT:
        least = max(least, highs.outward(relaxed.value + able[MOST_LEFT][1]))

    def tell(value: float) -> None:
        bound.lower(max(highs.outward(value), least))

    start = [j for j, (c, _) in enumerate(left) if c in used]
    found = highs.bound(core, nodes, limits.seconds, tell, stopped, start=start)
    bound.lower(max(found.bound, least))
    chosen = None
    if found.amounts is not None:
        chosen = frozenset(j for j, amount in enumerate(found.amounts) if amount > 0.5)
    return Settled(core, left, chosen, found.closed and len(able) <= MOST_LEFT)


def take(climb: Climb, found: Settled, state: State) -> None:
    """Go on from what was settled: from the week it began with, where it is proved that none is better than its own."""
    if found.closed:
        climb.back_to(state)
    if found.chosen is not None:
        climb.move(found.core, candidates(climb, found.left), found.chosen)


def candidates(climb: Climb, left: tuple[tuple[Column, float], ...]) -> Candidates:
    """The columns left as candidates, best first on each day."""
    days = range(len(climb.board.terms.days))
    by_worth = sorted(range(len(left)), key=lambda j: (-left[j][1], j))
    ranked = tuple(tuple(j for j in by_worth if left[j][0].cell == day) for day in days)
    must = frozenset(j for j, (column, _) in enumerate(left) if pinned_column(climb.board, column))
    return Candidates(tuple(column for column, _ in left), ranked, must)
