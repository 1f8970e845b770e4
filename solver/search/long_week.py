"""The course of a search for a week of many days: neighbourhoods here, bound and restricted masters in the worker."""

from __future__ import annotations

from collections.abc import Callable
from functools import partial

from setwright.solver.search.bounding import Bound, prove_patterns, relax_patterns
from setwright.solver.search.neighbourhood.neighbourhood_search import NeighbourhoodSearch
from setwright.solver.search.restricted_master import improve_incumbent, solve_restricted_master
from setwright.solver.search.solve_options import SolveOptions
from setwright.solver.search.worker import Worker, result

DURING_MASTER = 6
"""Neighbourhoods tried one by one while HiGHS solves the restricted master in the worker."""
DURING_PROOF = 10
"""The same while it branches for the bound."""
DURING_IMPROVEMENT = 4
"""The same while it improves the week at hand; the rest are tried two at a time."""


def search_long_week(
    lns: NeighbourhoodSearch, options: SolveOptions, bound: Bound, worker: Worker, find_first: Callable[[], bool]
) -> None:
    """Improve a longer week and lower its bound; nothing more where `find_first` finds no week. Raises Interrupted."""
    instance, check = lns.instance, lns.solver.signal.check
    patterns = worker.begin(partial(relax_patterns, instance, bound))
    master = worker.begin(partial(solve_restricted_master, instance, lns.solver.candidates, options, bound.cancelled))
    proved = worker.begin(lambda: prove_patterns(instance, patterns.result(), options, bound))
    if not find_first():
        return
    left = options.limits.rounds_for(lns.days)
    left -= lns.improve(min(DURING_MASTER, left))
    if (chosen := result(master, check)) is not None:
        lns.accept(chosen)
    left -= lns.improve(min(DURING_PROOF, left))
    if incumbent := lns.incumbent():
        improving = worker.begin(partial(improve_incumbent, incumbent, options, bound.cancelled))
        left -= lns.improve(min(DURING_IMPROVEMENT, left))
        if (chosen := result(improving, check)) is not None:
            lns.accept(chosen)
    lns.improve_in_pairs(left, worker)
    result(proved, check)
