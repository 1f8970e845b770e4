"""Reduced-cost fixing: a short week's columns that are in no better week are closed, HiGHS branches on the rest."""

from __future__ import annotations

import math
from concurrent.futures import Future
from dataclasses import dataclass

from setwright.solver.engines import highs
from setwright.solver.engines.build import all_day_columns, day_model
from setwright.solver.engines.highs import LinearRelaxation
from setwright.solver.linear.columns import Column
from setwright.solver.linear.instance import Instance
from setwright.solver.linear.linear_model import LinearModel
from setwright.solver.search.bounding import Bound
from setwright.solver.search.candidates import Candidates, is_pinned
from setwright.solver.search.limits import SHORT_DAYS, Limits
from setwright.solver.search.neighbourhood.neighbourhood_search import Incumbent, NeighbourhoodSearch
from setwright.solver.search.neighbourhood.neighbourhood_solver import Chosen, NeighbourhoodSolver
from setwright.solver.search.solve_options import SolveOptions

MOST_COLUMNS = 20_000
"""Columns on all days beyond which no relaxation over every column is made."""
NEAR_ENOUGH = 0.001
"""The share of the stimulus between score and bound within which nothing is branched on any more."""
MOST_OPEN = 2_700
"""Open columns that HiGHS can branch on to the end; of more it takes the best, and only looks for a better week."""
BEST = 1_500
"""How many of the best columns it then sees."""
HEURISTIC_SHARE = 0.1
"""The share of the limit's nodes that then go into looking for a better week."""
FEW = 1_500
"""Up to so many columns a week at hand helps HiGHS to prune; with more it costs the root more than it gains."""
USUAL = 2_000
"""Open columns at which the limit's nodes are what they say; fewer columns, whose nodes are cheaper, get more."""
MOST_TIMES = 4
"""Times the limit's nodes that few columns get at most."""


@dataclass(frozen=True)
class RelaxedWeek:
    """Every column of a short week on its days, and the linear relaxation over them."""

    model: LinearModel
    relaxed: LinearRelaxation


@dataclass(frozen=True)
class OpenColumns:
    """The columns that may be in a better week than the incumbent, with their reduced costs in score units."""

    columns: tuple[tuple[Column, float], ...]
    least_bound: float
    """Score units: no week with any other column scores more than this, so the bound cannot go below it."""


@dataclass(frozen=True)
class Branched:
    """What branching on the open columns gave."""

    model: LinearModel
    open: OpenColumns
    chosen: Chosen | None
    """The best week it found, as indices into the open columns."""
    proved: bool
    """Whether there is no better week than the better of this one and the incumbent."""


def relax_all_columns(instance: Instance) -> RelaxedWeek | None:
    """All columns of a short week with their relaxation; None for a longer week or one of too many columns."""
    if len(instance.resolved.days) > SHORT_DAYS:
        return None
    columns = all_day_columns(instance)
    if len(columns) > MOST_COLUMNS:
        return None
    model = day_model(instance, columns)
    relaxed = highs.relax(model)
    return RelaxedWeek(model, relaxed) if math.isfinite(relaxed.value) else None


def open_columns(week: RelaxedWeek, incumbent: Incumbent) -> OpenColumns:
    """The columns that their reduced costs do not fix at 0; the incumbent's own and pinned ones always stay open."""
    score, relaxed = float(incumbent.audit.score_units), week.relaxed
    used = {incumbent.solver.model.columns[j] for j in incumbent.chosen}
    reduced = dict(zip(week.model.columns, relaxed.reduced, strict=False))
    # A column whose reduced cost spans the gap between relaxation and best week is in no better week.
    able = [c for c in week.model.columns if reduced[c] >= score - highs.outward(relaxed.value)]
    least = score
    if len(able) > MOST_OPEN:
        able.sort(key=lambda c: -reduced[c])
        least = max(score, highs.outward(relaxed.value + reduced[able[BEST]]))
        able = able[:BEST]
    kept = {*able, *used, *(c for c in reduced if is_pinned(incumbent.solver.instance, c))}
    return OpenColumns(tuple((c, reduced[c]) for c in week.model.columns if c in kept), least)


def fix_and_branch(week: RelaxedWeek, incumbent: Incumbent, options: SolveOptions, bound: Bound) -> Branched | None:
    """Branch on the columns that may be in a better week than the incumbent, and lower the bound.

    None where the bound is so near already that nothing is to be gained.
    """
    best = incumbent.audit
    if bound.value - best.score_units <= NEAR_ENOUGH * best.stimulus_units:
        return None
    found = open_columns(week, incumbent)
    columns = [column for column, _ in found.columns]
    model = day_model(incumbent.solver.instance, columns)

    def lower(value: float) -> None:
        bound.lower(max(highs.outward(value), found.least_bound))

    used = {incumbent.solver.model.columns[j] for j in incumbent.chosen}
    start = [j for j, column in enumerate(columns) if column in used] if len(columns) <= FEW else None
    to_the_end = found.least_bound <= best.score_units
    nodes = _nodes_for(options.limits, len(columns), to_the_end)
    branched = highs.bound(model, nodes, options.seconds, lower, bound.cancelled, start=start)
    bound.lower(max(branched.bound, found.least_bound))
    return Branched(model, found, branched.chosen, branched.closed and to_the_end)


def adopt(lns: NeighbourhoodSearch, branched: Branched | None, incumbent: Incumbent) -> None:
    """Go on from what branching gave; where its week is proved best, from the incumbent that it began with.

    What the neighbourhoods found meanwhile depends on how long branching took: it is forgotten where it cannot count.
    """
    if branched is None or branched.proved:
        lns.restore(incumbent)
    if branched and branched.chosen is not None:
        candidates = _as_candidates(lns.instance, branched.open)
        solver = NeighbourhoodSolver(lns.instance, candidates, branched.model, lns.solver.signal)
        lns.accept_from(solver, branched.chosen)


def is_decided(future: Future[Branched | None]) -> bool:
    """Whether the best week is known already, so that what neighbourhoods find meanwhile counts for nothing."""
    if not future.done() or future.exception() is not None:
        return False
    branched = future.result()
    return branched is None or branched.proved


def _nodes_for(limits: Limits, columns: int, to_the_end: bool) -> int:
    """HiGHS nodes for so many open columns."""
    if not to_the_end:
        return round(HEURISTIC_SHARE * limits.fixing_nodes)
    return round(limits.fixing_nodes * min(MOST_TIMES, max(1.0, USUAL / max(1, columns))))


def _as_candidates(instance: Instance, found: OpenColumns) -> Candidates:
    """The open columns as candidates, best first on each day."""
    columns = tuple(column for column, _ in found.columns)
    by_worth = sorted(range(len(columns)), key=lambda j: (-found.columns[j][1], j))
    days = range(len(instance.resolved.days))
    ranked = tuple(tuple(j for j in by_worth if columns[j].group == day) for day in days)
    must = frozenset(j for j, column in enumerate(columns) if is_pinned(instance, column))
    return Candidates(columns, ranked, must)
