"""Settling a short week: columns that cannot be in a better week are closed, and HiGHS branches on the rest."""

from __future__ import annotations

import math
from collections.abc import Callable
from concurrent.futures import Future
from dataclasses import dataclass

from setwright.solver.engines import highs
from setwright.solver.engines.build import all_day_columns, day_model
from setwright.solver.engines.highs import LinearRelaxation
from setwright.solver.linear.columns import Column, Instance
from setwright.solver.linear.linear_model import LinearModel
from setwright.solver.search.bounding import Bound
from setwright.solver.search.candidates import Candidates, pinned_column
from setwright.solver.search.limits import SHORT_DAYS, Limits
from setwright.solver.search.neighbourhood_search import NeighbourhoodSearch, State

MOST_COLUMNS = 20_000
CLOSE = 0.001
"""The share of the stimulus within which a week is settled well enough."""
MOST_LEFT = 2_700
"""Columns that HiGHS can settle; where more are left it only looks for a better week, on the best of them."""
BEST = 1_500
SEEKING = 0.1
"""The share of the limit's nodes that go into looking."""
FEW = 1_500
"""Up to so many columns a week at hand helps HiGHS to prune; with more it costs the root more than it gains."""
USUAL = 2_000
"""Columns left at which the limit's nodes are what they say; fewer columns, whose nodes are cheaper, get more."""
MOST_TIMES = 4


@dataclass(frozen=True)
class Daily:
    """Every column of a week on its days, and the linear relaxation over them."""

    model: LinearModel
    relaxed: LinearRelaxation


@dataclass(frozen=True)
class Fixing:
    """What HiGHS made of a week: the columns it branched on, those in its best week, and whether it is proved."""

    core: LinearModel
    left: tuple[tuple[Column, float], ...]
    chosen: frozenset[int] | None
    closed: bool


def daily(instance: Instance) -> Daily | None:
    """All columns of a short week with their relaxation; None for a longer week or one of too many columns."""
    if len(instance.resolved.days) > SHORT_DAYS:
        return None
    columns = all_day_columns(instance)
    if len(columns) > MOST_COLUMNS:
        return None
    model = day_model(instance, columns)
    relaxed = highs.relax(model)
    return Daily(model, relaxed) if math.isfinite(relaxed.value) else None


def settle(
    instance: Instance, whole: Daily, state: State, limits: Limits, bound: Bound, stopped: Callable[[], bool]
) -> Fixing | None:
    """Branch on the columns that may be in a better week than one at hand, and lower the bound; None: it is close."""
    best = state.best
    if bound.value - best.score_units <= CLOSE * best.stimulus_units:
        return None
    left, least = left_by(instance, whole, state)
    core = day_model(instance, [c for c, _ in left])

    def tell(value: float) -> None:
        bound.lower(max(highs.outward(value), least))

    used = {state.model.columns[j] for j in state.chosen}
    start = [j for j, (c, _) in enumerate(left) if c in used] if len(left) <= FEW else None
    settling = least <= best.score_units
    nodes = nodes_for(limits, len(left)) if settling else round(SEEKING * limits.fixing_nodes)
    found = highs.bound(core, nodes, limits.seconds, tell, stopped, start=start)
    bound.lower(max(found.bound, least))
    chosen = None
    if found.amounts is not None:
        chosen = frozenset(j for j, amount in enumerate(found.amounts) if amount > 0.5)
    return Fixing(core, left, chosen, found.closed and settling)


def left_by(instance: Instance, whole: Daily, state: State) -> tuple[tuple[tuple[Column, float], ...], float]:
    """The columns that may be in a better week, with their reduced costs, and what no week with another can pass."""
    score, relaxed = float(state.best.score_units), whole.relaxed
    used = {state.model.columns[j] for j in state.chosen}
    objective = dict(zip(whole.model.columns, relaxed.reduced, strict=False))
    # A column whose reduced cost spans the gap between relaxation and best week is in no better week.
    able = [c for c in whole.model.columns if objective[c] >= score - highs.outward(relaxed.value)]
    least = score
    if len(able) > MOST_LEFT:
        able.sort(key=lambda c: -objective[c])
        least = max(score, highs.outward(relaxed.value + objective[able[BEST]]))
        able = able[:BEST]
    kept = {*able, *used, *(c for c in objective if pinned_column(instance, c))}
    return tuple((c, objective[c]) for c in whole.model.columns if c in kept), least


def nodes_for(limits: Limits, columns: int) -> int:
    return round(limits.fixing_nodes * min(MOST_TIMES, max(1.0, USUAL / max(1, columns))))


def take(lns: NeighbourhoodSearch, found: Fixing | None, state: State) -> None:
    """Go on from what was settled: from the week it began with, where it is proved that none is better than its own."""
    if found is None or found.closed:
        lns.back_to(state)
    if found and found.chosen is not None:
        lns.move(found.core, candidates(lns, found.left), found.chosen)


def done(future: Future[Fixing | None]) -> bool:
    """Whether a week is settled already, so that what the climb does meanwhile counts for nothing."""
    if not future.done() or future.exception() is not None:
        return False
    found = future.result()
    return found is None or found.closed


def candidates(lns: NeighbourhoodSearch, left: tuple[tuple[Column, float], ...]) -> Candidates:
    """The columns left as candidates, best first on each day."""
    days = range(len(lns.instance.resolved.days))
    by_worth = sorted(range(len(left)), key=lambda j: (-left[j][1], j))
    ranked = tuple(tuple(j for j in by_worth if left[j][0].group == day) for day in days)
    must = frozenset(j for j, (column, _) in enumerate(left) if pinned_column(lns.instance, column))
    return Candidates(tuple(column for column, _ in left), ranked, must)
