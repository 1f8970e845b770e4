"""The search: `search(board, limits)` -> the best week found, what no week can pass, and how it ended."""

from __future__ import annotations

import math
import time
from collections.abc import Callable
from dataclasses import dataclass
from functools import partial

from setwright.solver.auditing import Audit
from setwright.solver.engines import highs
from setwright.solver.engines.build import week_model
from setwright.solver.evaluation.week import Week
from setwright.solver.linear.columns import Instance
from setwright.solver.linear.linear_model import LinearModel
from setwright.solver.search.bounding import Bound, prove_patterns, prove_week, relax_patterns
from setwright.solver.search.candidates import candidates_by_day, candidates_of
from setwright.solver.search.initial_solution import started
from setwright.solver.search.limits import Limits
from setwright.solver.search.neighbourhood_search import NeighbourhoodSearch, Stopped
from setwright.solver.search.reduced_cost_fixing import Daily, daily, done, settle, take
from setwright.solver.search.restricted_master import improve_incumbent, solve_restricted_master
from setwright.solver.search.warm_start import opened_with
from setwright.solver.search.worker import Worker, result


@dataclass(frozen=True)
class Progress:
    """What a watcher is told: the best score and the bound, in score units, and the seconds so far."""

    score: float
    bound: float
    seconds: float


@dataclass(frozen=True)
class Outcome:
    """The end of a search: the best week's audit (None: none found), the bound in score units, how it ended."""

    best: Audit | None
    bound: float
    ended_by: str
    lns: NeighbourhoodSearch


OPENING = 4
"""Neighbourhoods of a short week tried before it is settled: a better week at hand closes more columns."""
AFTER = 8
"""Neighbourhoods of a short week tried after HiGHS, where it could not settle the week."""
FIRST = 6
"""Neighbourhoods of a longer week tried one by one while HiGHS leaps in the other lane."""
THEN = 10
"""The same while it proves."""
MEANWHILE = 4
"""The same while HiGHS polishes the week at hand; the rest are tried by two."""
Watch = Callable[[Progress], None]
Course = Callable[[NeighbourhoodSearch, Bound, Worker], None]


def search(
    instance: Instance,
    limits: Limits,
    watch: Watch | None = None,
    stopped: Callable[[], bool] = lambda: False,
    side_by_side: bool = True,
    start: Week | None = None,
    refill: bool = False,
) -> Outcome:
    """Bound and climb, side by side on two cores or one after the other: the result is the same.

    With `start` the climb goes on from that week, if the board can make it and it breaks nothing; with `refill` its
    days are filled first, one by one, as they are in a week from nothing.
    """
    begun = time.monotonic()
    week = week_model(instance)
    relaxed = highs.relax(week)
    whole = daily(instance)
    usual = candidates_by_day(instance, whole.model, whole.relaxed) if whole else candidates_of(instance, week, relaxed)
    candidates, first = opened_with(instance, usual, start)
    lns = NeighbourhoodSearch(instance, candidates, limits, begun + limits.seconds)
    lns.stopped, lns.refill = stopped, refill
    bound = Bound()

    def tell(*_: object) -> None:
        if watch:
            score = lns.best.score_units if lns.best else -math.inf
            watch(Progress(score, bound.value, time.monotonic() - begun))

    lns.tell = tell
    bound.tell = tell
    if whole:
        bound.lower(highs.outward(whole.relaxed.value))
    bound.lower(highs.outward(relaxed.value))
    worker = Worker(side_by_side)
    course: Course = partial(settled, whole, week) if whole else long_week
    try:
        if first:
            lns.take(first)
        course(lns, bound, worker)
    except Stopped:
        pass
    finally:
        bound.cancelled = True
        fault = worker.end()
    if fault:
        raise fault
    return Outcome(lns.best, bound.value, ended(lns, bound), lns)


def settled(whole: Daily, week: LinearModel, lns: NeighbourhoodSearch, bound: Bound, worker: Worker) -> None:
    """A short week: a few rounds, then HiGHS settles it from there while the rounds go on."""
    limits = lns.limits
    proved = worker.begin(partial(prove_week, week, limits, bound))
    bound.lower(highs.outward(whole.relaxed.value))
    rounds = limits.rounds_for(len(lns.instance.resolved.days))
    if not started(lns):
        return
    lns.improve(min(OPENING, rounds))
    state = lns.state()
    if limits.fixing_nodes and state:
        future = worker.begin(partial(settle, lns.instance, whole, state, limits, bound, lambda: bound.cancelled))
        for _ in range(rounds - OPENING):
            if not done(future):
                lns.improve(1)
        found = result(future, lns.check)
        take(lns, found, state)
        if found and not found.closed:
            lns.climb_by_two(AFTER, worker)
    else:
        lns.improve(rounds - OPENING)
    result(proved, lns.check)


def long_week(lns: NeighbourhoodSearch, bound: Bound, worker: Worker) -> None:
    """A longer week: rounds while HiGHS leaps, proves and polishes in the other lane, then rounds by two."""
    instance, limits = lns.instance, lns.limits

    def cancelled() -> bool:
        return bound.cancelled

    patterns = worker.begin(partial(relax_patterns, instance, bound))
    leaping = worker.begin(partial(solve_restricted_master, instance, lns.candidates, limits, cancelled))
    proved = worker.begin(lambda: prove_patterns(instance, patterns.result(), limits, bound))
    if not started(lns):
        return
    left = limits.rounds_for(len(instance.resolved.days))
    left -= lns.improve(min(FIRST, left))
    leapt_to = result(leaping, lns.check)
    lns.keep(leapt_to)
    left -= lns.improve(min(THEN, left))
    if state := lns.state():
        polishing = worker.begin(partial(improve_incumbent, state, instance, limits, cancelled))
        left -= lns.improve(min(MEANWHILE, left))
        polished = result(polishing, lns.check)
        lns.keep(polished)
    lns.climb_by_two(left, worker)
    result(proved, lns.check)


def ended(lns: NeighbourhoodSearch, bound: Bound) -> str:
    """Which end it was; proved only when nothing above the score is left but rounding."""
    if lns.best is not None and bound.value - lns.best.score_units <= 1e-4 * abs(bound.value):
        return "proved"
    return lns.ended
