"""Reduced-cost fixing: a short week's columns that are in no better week are closed, HiGHS branches on the rest."""

from __future__ import annotations

from setwright.solver.engines import highs
from setwright.solver.engines.build import columns_with_halves, day_model
from setwright.solver.linear.columns import Column, day_groups
from setwright.solver.linear.instance import Instance
from setwright.solver.search.bounding import Bound
from setwright.solver.search.candidates import Ranking, is_pinned
from setwright.solver.search.decoding import columns_with_pairs
from setwright.solver.search.limits import Limits
from setwright.solver.search.neighbourhood.neighbourhood_search import Incumbent
from setwright.solver.search.solve_options import SolveOptions

USUAL = 1_000
"""Open columns at which the limit's nodes are what they say; the nodes fall with the square of more columns."""
WIDE = 0.015
"""A gap, as a share of the stimulus, that branching on many columns closes further than all else."""
MOST_TIMES = 4
"""Times the limit's nodes that few columns get at most."""


def open_columns(ranking: Ranking, incumbent: Incumbent) -> list[Column]:
    """The columns, halves in place of pairs, that may be in a better week than the incumbent.

    A column whose reduced cost spans the gap between relaxation and incumbent is in no better week. The incumbent's own
    and pinned ones always stay open.
    """
    instance, most = ranking.instance, incumbent.audit.score_units - highs.outward(ranking.relaxed)
    groups = day_groups(instance)
    used = {(column.group, a) for column in incumbent.columns for a in column.assignments}
    return [
        column
        for column in columns_with_halves(instance, groups)
        if ranking.worth(groups[column.group], column) >= most
        or (column.group, column.assignments[0]) in used
        or is_pinned(instance, column)
    ]


def columns_for_branching(ranking: Ranking, incumbent: Incumbent, options: SolveOptions, bound: Bound) -> list[Column]:
    """The columns that are open; none where branching is left out, or where they are too many for it."""
    most, best = options.limits.fixing_columns, incumbent.audit
    if bound.value - best.score_units > WIDE * best.stimulus_units:
        most *= 2
    columns = open_columns(ranking, incumbent) if most else []
    return columns if len(columns) <= most else []


def fix_and_branch(
    instance: Instance, columns: list[Column], incumbent: Incumbent, options: SolveOptions, bound: Bound
) -> tuple[Column, ...]:
    """The best week of the columns that are open, empty where branching found none; lowers the bound to its proof."""
    best = incumbent.audit
    used = {(column.group, a) for column in incumbent.columns for a in column.assignments}
    start = [j for j, column in enumerate(columns) if (column.group, column.assignments[0]) in used]
    model = day_model(instance, columns)

    def lower(value: float) -> None:
        # Weeks with a closed column score no more than the incumbent.
        bound.lower(max(value, best.score_units))

    branched = highs.bound(
        model,
        _nodes_for(options.limits, len(columns)),
        options.seconds,
        lambda value: lower(highs.outward(value)),
        bound.cancelled,
        # Measured: restarts close what the root leaves open, and one heuristic finds as much as all, in less time.
        heuristics="one",
        restarts=True,
        start=start,
    )
    lower(branched.bound)
    return () if branched.amounts is None else columns_with_pairs(model, branched.amounts)


def _nodes_for(limits: Limits, columns: int) -> int:
    """HiGHS nodes for so many open columns; many make a node dear."""
    return max(1, round(limits.fixing_nodes * min(MOST_TIMES, (USUAL / columns) ** 2)))
