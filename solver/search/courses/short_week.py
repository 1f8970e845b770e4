"""The course of a search for a week of few days: neighbourhoods and the bound, then HiGHS from the best of both."""

from __future__ import annotations

from functools import partial

from setwright.solver.auditing import Audit
from setwright.solver.search.bounding import is_near, prove_week
from setwright.solver.search.courses.given import Given
from setwright.solver.search.neighbourhood.initial_solution import adopt_columns
from setwright.solver.search.reduced_cost_fixing import fix_and_branch
from setwright.solver.search.restricted_master import improve_beside_neighbourhoods
from setwright.solver.search.worker import result

STAGES = 3
"""Parts of the neighbourhoods: one while the week without days is branched on, one beside each improvement by HiGHS."""


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
    while left >= stage and (incumbent := lns.incumbent()) and incumbent.audit is not started:
        if is_near(incumbent.audit, bound.value, options):
            break
        branched = result(worker.begin(partial(fix_and_branch, ranking, incumbent, options, bound)), check)
        if branched is not None:
            adopt_columns(lns, branched)
            break
        started = incumbent.audit
        improve_beside_neighbourhoods(lns, ranking, classes, stage, options, bound, worker)
        left -= stage
