"""The course of a search for a week of few days: some neighbourhoods, then branching over all columns beside more."""

from __future__ import annotations

from collections.abc import Callable
from functools import partial

from setwright.solver.linear.linear_model import LinearModel
from setwright.solver.search.bounding import Bound, prove_week
from setwright.solver.search.neighbourhood.neighbourhood_search import NeighbourhoodSearch
from setwright.solver.search.reduced_cost_fixing import RelaxedWeek, adopt, fix_and_branch, is_decided
from setwright.solver.search.solve_options import SolveOptions
from setwright.solver.search.worker import Worker, result

BEFORE = 4
"""Neighbourhoods tried before columns are fixed: a better week at hand fixes more of them."""
AFTER = 8
"""Neighbourhoods tried after branching, where it did not end in a proof."""


def search_short_week(
    week: LinearModel,
    relaxed_days: RelaxedWeek,
    lns: NeighbourhoodSearch,
    options: SolveOptions,
    bound: Bound,
    worker: Worker,
    find_first: Callable[[], bool],
) -> None:
    """Improve a short week and lower its bound; nothing more where `find_first` finds no week. Raises Interrupted."""
    check = lns.solver.signal.check
    proved = worker.begin(partial(prove_week, week, options, bound))
    if not find_first():
        return
    rounds = options.limits.rounds_for(lns.days)
    lns.improve(min(BEFORE, rounds))
    incumbent = lns.incumbent()
    if options.limits.fixing_nodes and incumbent:
        branching = worker.begin(partial(fix_and_branch, relaxed_days, incumbent, options, bound))
        for _ in range(rounds - BEFORE):
            if not is_decided(branching):
                lns.improve(1)
        branched = result(branching, check)
        adopt(lns, branched, incumbent)
        if branched and not branched.proved:
            lns.improve_in_pairs(AFTER, worker)
    else:
        lns.improve(rounds - BEFORE)
    result(proved, check)
