"""The search: `search(board, limits)` -> the best week found, what no week can pass, and how it ended."""

from __future__ import annotations

import math
import time
from collections.abc import Callable
from dataclasses import dataclass
from functools import partial

from setwright.solver.engines.build import week_sheet
from setwright.solver.linear.columns import Board
from setwright.solver.engines import highs
from setwright.solver.search.limits import Limits
from setwright.solver.search.bounding import Bound, prove_themes, prove_week, relax_themes
from setwright.solver.search.candidates import candidates_by_day, candidates_of
from setwright.solver.search.neighbourhood_search import Climb, Stopped
from setwright.solver.search.worker import Lane, result
from setwright.solver.search.restricted_master import leap, polish
from setwright.solver.search.initial_solution import started
from setwright.solver.search.reduced_cost_fixing import Daily, daily, done, settle, take
from setwright.solver.search.warm_start import opened_with
from setwright.solver.linear.linear_model import Sheet
from setwright.solver.auditing import Audit
from setwright.solver.evaluation.week import Week


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
    climb: Climb


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
Course = Callable[[Climb, Bound, Lane], None]


def search(
    board: Board,
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
    week = week_sheet(board)
    relaxed = highs.relax(week)
    whole = daily(board)
    usual = candidates_by_day(board, whole.sheet, whole.relaxed) if whole else candidates_of(board, week, relaxed)
    candidates, first = opened_with(board, usual, start)
    climb = Climb(board, candidates, limits, begun + limits.seconds)
    climb.stopped, climb.refill = stopped, refill
    bound = Bound()

    def tell(*_: object) -> None:
        if watch:
            score = climb.best.score_units if climb.best else -math.inf
            watch(Progress(score, bound.value, time.monotonic() - begun))

    climb.tell = tell
    bound.tell = tell
    if whole:
        bound.lower(highs.outward(whole.relaxed.value))
    bound.lower(highs.outward(relaxed.value))
    lane = Lane(side_by_side)
    course: Course = partial(settled, whole, week) if whole else leapt
    try:
        if first:
            climb.take(first)
        course(climb, bound, lane)
    except Stopped:
        pass
    finally:
        bound.cancelled = True
        fault = lane.end()
    if fault:
        raise fault
    return Outcome(climb.best, bound.value, ended(climb, bound), climb)


def settled(whole: Daily, week: Sheet, climb: Climb, bound: Bound, lane: Lane) -> None:
    """A short week: a few rounds, then HiGHS settles it from there while the rounds go on."""
    limits = climb.limits
    proved = lane.begin(partial(prove_week, week, limits, bound))
    bound.lower(highs.outward(whole.relaxed.value))
    rounds = limits.rounds_for(len(climb.board.terms.days))
    if not started(climb):
        return
    climb.climb(min(OPENING, rounds))
    state = climb.state()
    if limits.settle_nodes and state:
        future = lane.begin(partial(settle, climb.board, whole, state, limits, bound, lambda: bound.cancelled))
        for _ in range(rounds - OPENING):
            if not done(future):
                climb.climb(1)
        found = result(future, climb.check)
        take(climb, found, state)
        if found and not found.closed:
            climb.climb_by_two(AFTER, lane)
    else:
        climb.climb(rounds - OPENING)
    result(proved, climb.check)


def leapt(climb: Climb, bound: Bound, lane: Lane) -> None:
    """A longer week: rounds while HiGHS leaps, proves and polishes in the other lane, then rounds by two."""
    board, limits = climb.board, climb.limits

    def cancelled() -> bool:
        return bound.cancelled

    themes = lane.begin(partial(relax_themes, board, bound))
    leaping = lane.begin(partial(leap, board, climb.candidates, limits, cancelled))
    proved = lane.begin(lambda: prove_themes(board, themes.result(), limits, bound))
    if not started(climb):
        return
    left = limits.rounds_for(len(board.terms.days))
    left -= climb.climb(min(FIRST, left))
    leapt_to = result(leaping, climb.check)
    climb.keep(leapt_to)
    left -= climb.climb(min(THEN, left))
    if state := climb.state():
        polishing = lane.begin(partial(polish, state, board, limits, cancelled))
        left -= climb.climb(min(MEANWHILE, left))
        polished = result(polishing, climb.check)
        climb.keep(polished)
    climb.climb_by_two(left, lane)
    result(proved, climb.check)


def ended(climb: Climb, bound: Bound) -> str:
    """Which end it was; proved only when nothing above the score is left but rounding."""
    if climb.best is not None and bound.value - climb.best.score_units <= 1e-4 * abs(bound.value):
        return "proved"
    return climb.ended
