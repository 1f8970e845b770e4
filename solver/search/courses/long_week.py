"""The course of a search for a week of many days: neighbourhoods here, bound and HiGHS's improvements in the worker."""

from __future__ import annotations

from functools import partial

from setwright.solver.search.bounding import is_near, prove_patterns, prove_week, relax_patterns
from setwright.solver.search.courses.given import Given
from setwright.solver.search.restricted_master import improve_beside_neighbourhoods
from setwright.solver.search.worker import result

BEFORE = 8
"""Neighbourhoods tried one by one while the week without days is branched on."""
IMPROVEMENTS = 2
"""How often HiGHS improves the week at hand."""
DURING_IMPROVEMENT = 8
"""Neighbourhoods tried beside each of them; the rest are tried while HiGHS branches for the bound."""


def search_long_week(given: Given) -> None:
    """Improve a longer week and lower its bound; nothing more where there is no first one. Raises Interrupted."""
    week, ranking, lns, find_first = given.week, given.ranking, given.lns, given.find_first
    options, bound, worker = given.options, given.bound, given.worker
    instance, check = lns.instance, lns.solver.signal.check
    proved = worker.begin(partial(prove_week, week, options, bound))
    if not find_first():
        return
    left = options.limits.rounds_for(lns.days)
    left -= lns.improve(min(BEFORE, left))
    classes = result(proved, check)
    for _ in range(IMPROVEMENTS):
        rounds = min(DURING_IMPROVEMENT, left)
        improve_beside_neighbourhoods(lns, ranking, classes, rounds, options, bound, worker)
        left -= rounds
    if lns.best and is_near(lns.best, bound.value, options):
        return
    patterns = worker.begin(partial(relax_patterns, instance, bound))
    deeper = worker.begin(lambda: prove_patterns(instance, patterns.result(), options, bound))
    lns.improve(left)
    result(deeper, check)
