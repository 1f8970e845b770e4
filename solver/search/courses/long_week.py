"""The course of a search for a week of many days: neighbourhoods here, bound and HiGHS's improvements in the worker."""

from __future__ import annotations

from functools import partial

from setwright.solver.search.bounding import is_near, prove_patterns, prove_week, relax_patterns
from setwright.solver.search.courses.given import Given
from setwright.solver.search.restricted_master import improve_beside_neighbourhoods
from setwright.solver.search.worker import result

BEFORE = 8
"""Neighbourhoods tried one by one while the week without days is branched on."""
DURING_IMPROVEMENT = 8
"""Neighbourhoods tried beside HiGHS's improvement of the week at hand."""


def search_long_week(given: Given) -> None:
    """Improve a longer week and lower its bound; nothing more where there is no first one. Raises Interrupted."""
    week, ranking, lns, find_first = given.week, given.ranking, given.lns, given.find_first
    options, bound, worker = given.options, given.bound, given.worker
    instance, check = lns.instance, lns.solver.signal.check
    proved = worker.begin(partial(prove_week, week, options, bound))
    patterns = worker.begin(partial(relax_patterns, instance, bound))
    if not find_first():
        return
    left = options.limits.rounds_for(lns.days)
    left -= lns.improve(min(BEFORE, left))
    classes, rounds = result(proved, check), min(DURING_IMPROVEMENT, left)
    improve_beside_neighbourhoods(lns, ranking, classes, rounds, options, bound, worker)
    relaxed = result(patterns, check)
    if lns.best and is_near(lns.best, bound.value, options):
        return
    deeper = worker.begin(partial(prove_patterns, instance, relaxed, options, bound))
    lns.improve(left - rounds)
    result(deeper, check)
