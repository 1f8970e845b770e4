"""The course of a search for a week of few days: neighbourhoods and the bound, then HiGHS from the best of both."""

from __future__ import annotations

from functools import partial

from setwright.solver.auditing import Audit
from setwright.solver.search.bounding import is_near, prove_week
from setwright.solver.search.courses.given import Given
from setwright.solver.search.neighbourhood.initial_solution import adopt_columns
from setwright.solver.search.reduced_cost_fixing import columns_for_branching, fix_and_branch
from setwright.solver.search.restricted_master import improve_beside_neighbourhoods
from setwright.solver.search.worker import result

STAGES = 3
"""Parts of the neighbourhoods: one while the week without days is branched on, one beside each step by HiGHS."""
BRANCHINGS = 2
"""How often HiGHS branches after reduced-cost fixing: again, with fewer columns open, from a better week."""


def search_short_week(given: Given) -> None:
    """Improve a short week and lower its bound; nothing more where there is no first one. Raises Interrupted."""
    week, ranking, lns, find_first = given.week, given.ranking, given.lns, given.find_first
    options, bound, worker = given.options, given.bound, given.worker
    check = lns.solver.signal.check
    proved = worker.begin(partial(prove_week, week, options, bound))
    if not find_first():
        return
    left = options.limits.rounds_for(lns.days)
    stage = max(1, left // STAGES)
    left -= lns.improve(min(stage, left))
    classes = result(proved, check)
    started: Audit | None = None
    branchings = 0
    while (incumbent := lns.incumbent()) and incumbent.audit is not started:
        if is_near(incumbent.audit, bound.value, options):
            break
        started = incumbent.audit
        if columns := columns_for_branching(ranking, incumbent, options, bound):
            if branchings == BRANCHINGS:
                break
            branching = worker.begin(partial(fix_and_branch, lns.instance, columns, incumbent, options, bound))
            left -= lns.improve(min(stage, left))
            found = result(branching, check)
            adopt_columns(lns, found)
            branchings += 1
        elif left >= stage:
            improve_beside_neighbourhoods(lns, ranking, classes, stage, options, bound, worker)
            left -= stage
        else:
            break
