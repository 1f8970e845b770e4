"""The finish of a short week: columns that cannot be in a better week are closed, and HiGHS settles the rest."""

from __future__ import annotations

import math
from dataclasses import dataclass

from setwright.solver.model.build import all_day_columns, day_sheet
from setwright.solver.model.columns import Board, Column
from setwright.solver.model.engines import highs
from setwright.solver.model.engines.highs import Relaxed
from setwright.solver.model.limits import SHORT_DAYS, Limits
from setwright.solver.model.search.bounding import Bound
from setwright.solver.model.search.candidates import Candidates, pinned_column
from setwright.solver.model.search.climb import Climb
from setwright.solver.model.sheet import Sheet

MOST_COLUMNS = 12_000
MOST_LEFT = 6_000
CLOSE = 0.001
"""The share of the stimulus within which a week is settled well enough."""
USUAL = 2_000
"""Columns left at which the limit's nodes are what they say; fewer columns, whose nodes are cheaper, get more."""
MOST_TIMES = 4


@dataclass(frozen=True)
class Daily:
    """Every column of a week on its days, and the linear relaxation over them."""

    sheet: Sheet
    relaxed: Relaxed


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


def finish(climb: Climb, bound: Bound, limits: Limits, whole: Daily | None) -> None:
    """Lower the bound and raise the week of a brief of few days, from every column that there is."""
    board, best = climb.board, climb.best
    if best is None or whole is None or not limits.finish_nodes:
        return
    if bound.value - best.score_units <= CLOSE * best.stimulus_units:
        return
    relaxed = whole.relaxed
    bound.lower(highs.outward(relaxed.value))
    # A column whose reduced cost spans the gap between relaxation and best week is in no better week.
    floor = best.score_units - highs.outward(relaxed.value)
    listed = zip(whole.sheet.columns, relaxed.reduced, strict=False)
    left = [(c, r) for c, r in listed if r >= floor or pinned_column(board, c)]
    if len(left) > MOST_LEFT:
        return
    core = day_sheet(board, [c for c, _ in left])
    nodes = round(limits.finish_nodes * min(MOST_TIMES, max(1.0, USUAL / max(1, len(left)))))
    found = highs.bound(core, nodes, limits.seconds, None, climb.stopped)
    bound.lower(max(found.bound, float(best.score_units)))
    if found.amounts is not None:
        chosen = frozenset(j for j, amount in enumerate(found.amounts) if amount > 0.5)
        climb.move(core, candidates(climb, left), chosen)


def candidates(climb: Climb, left: list[tuple[Column, float]]) -> Candidates:
    """The columns left as candidates, best first on each day."""
    days = range(len(climb.board.terms.days))
    by_worth = sorted(range(len(left)), key=lambda j: (-left[j][1], j))
    ranked = tuple(tuple(j for j in by_worth if left[j][0].cell == day) for day in days)
    must = frozenset(j for j, (column, _) in enumerate(left) if pinned_column(climb.board, column))
    return Candidates(tuple(column for column, _ in left), ranked, must)
