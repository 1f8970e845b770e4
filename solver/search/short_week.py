"""The course of a search for a week of few days: neighbourhoods and the bound, then HiGHS from the best of both."""

from __future__ import annotations

from collections.abc import Callable
from functools import partial

from setwright.solver.linear.linear_model import LinearModel
from setwright.solver.search.bounding import Bound, is_near, prove_week
from setwright.solver.search.candidates import Ranking
from setwright.solver.search.neighbourhood.initial_solution import adopt_columns
from setwright.solver.search.neighbourhood.neighbourhood_search import NeighbourhoodSearch
from setwright.solver.search.reduced_cost_fixing import fix_and_branch
from setwright.solver.search.restricted_master import improve_incumbent
from setwright.solver.search.solve_options import SolveOptions
from setwright.solver.search.worker import Worker, result

BEFORE = 4
"""Neighbourhoods tried while the week without days is branched on."""
IMPROVEMENTS = 2
"""How often HiGHS improves the week at hand, or branches to the end where few columns are left."""
DURING = 4
"""Neighbourhoods tried beside each improvement."""


def search_short_week(
    week: LinearModel,
    ranking: Ranking,
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
    lns.improve(min(BEFORE, options.limits.rounds_for(lns.days)))
    classes = result(proved, check)
    for _ in range(IMPROVEMENTS if options.limits.heuristic_nodes else 0):
        incumbent = lns.incumbent()
        if incumbent is None or is_near(incumbent.audit, bound.value, options):
            break
        branched = result(worker.begin(partial(fix_and_branch, ranking, incumbent, options, bound)), check)
        if branched is not None:
            adopt_columns(lns, branched.columns)
            break
        improving = worker.begin(partial(improve_incumbent, incumbent, ranking, classes, options, bound.cancelled))
        lns.improve(DURING)
        if columns := result(improving, check):
            adopt_columns(lns, columns)
        if lns.best is incumbent.audit:
            break
