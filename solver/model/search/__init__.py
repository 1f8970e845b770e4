"""The search: `search(board, limits)` -> the best week found, what no week can pass, and how it ended."""

from __future__ import annotations

import math
import time
from collections.abc import Callable
from dataclasses import dataclass
from functools import partial

from setwright.solver.model.build import week_sheet
from setwright.solver.model.columns import Board
from setwright.solver.model.engines import highs
from setwright.solver.model.limits import Limits
from setwright.solver.model.search.bounding import Bound, prove
from setwright.solver.model.search.candidates import candidates_by_day, candidates_of
from setwright.solver.model.search.climb import Climb, Stopped
from setwright.solver.model.search.lane import Lane, result
from setwright.solver.model.search.leap import leap, polish
from setwright.solver.model.search.settle import Daily, daily, done, settle, take
from setwright.solver.model.search.warm import opened_with
from setwright.solver.reckoning.audit import Audit
from setwright.solver.reckoning.week import Week


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
BESIDE = 12
"""Neighbourhoods of a longer week tried one by one, while the other lane proves and leaps."""
MEANWHILE = 4
"""Neighbourhoods of a longer week tried while HiGHS polishes the week at hand."""
Watch = Callable[[Progress], None]


def search(
    board: Board,
    limits: Limits,
    watch: Watch | None = None,
    stopped: Callable[[], bool] = lambda: False,
    side_by_side: bool = True,
    start: Week | None = None,
) -> Outcome:
    """Bound and climb, side by side on two cores or one after the other: the result is the same.

    With `start` the climb goes on from that week, if the board can make it and it breaks nothing.
    """
    begun = time.monotonic()
    week = week_sheet(board)
    relaxed = highs.relax(week)
    whole = daily(board)
    usual = candidates_by_day(board, whole.sheet, whole.relaxed) if whole else candidates_of(board, week, relaxed)
    candidates, first = opened_with(board, usual, start)
    climb = Climb(board, candidates, limits, begun + limits.seconds)
    climb.stopped = stopped
    bound = Bound()

    def tell(*_: object) -> None:
        if watch:
            score = climb.best.score_units if climb.best else -math.inf
            watch(Progress(score, bound.value, time.monotonic() - begun))

    climb.tell = tell
    bound.tell = tell
    if whole:
        bound.lower(highs.outward(whole.relaxed.value))
    lane = Lane(side_by_side)
    try:
        proved = lane.begin(partial(prove, board, week, relaxed, limits, bound))
        if (first and climb.take(first)) or climb.start():
            if whole:
                settled(climb, whole, bound, lane)
            else:
                leapt(climb, bound, lane)
        result(proved, climb.check)
    except Stopped:
        pass
    finally:
        bound.cancelled = True
        fault = lane.end()
    if fault:
        raise fault
    return Outcome(climb.best, bound.value, ended(climb, bound), climb)


def settled(climb: Climb, whole: Daily, bound: Bound, lane: Lane) -> None:
    """A short week: a few rounds, then HiGHS settles it from there while the rounds go on."""
    limits = climb.limits
    rounds = limits.rounds_for(len(climb.board.terms.days))
    climb.climb(min(OPENING, rounds))
    state = climb.state()
    if not limits.settle_nodes or state is None:
        climb.climb(rounds - OPENING)
        return
    work = partial(settle, climb.board, whole, state, limits, bound, lambda: bound.cancelled)
    future = lane.begin(work)
    for _ in range(rounds - OPENING):
        if not done(future):
            climb.climb(1)
    found = result(future, climb.check)
    take(climb, found, state)
    if found and not found.closed:
        climb.climb_by_two(AFTER, lane)


def leapt(climb: Climb, bound: Bound, lane: Lane) -> None:
    """A longer week: rounds while HiGHS looks for a better start, then rounds by two."""
    limits = climb.limits
    rounds = limits.rounds_for(len(climb.board.terms.days))
    work = partial(leap, climb.board, climb.candidates, limits, lambda: bound.cancelled)
    future = lane.begin(work) if limits.leap_nodes else None
    climb.climb(min(BESIDE, rounds))
    if future and (columns := result(future, climb.check)) and climb.take(columns):
        climb.closed.clear()
    state = climb.state()
    if future and state:
        future = lane.begin(partial(polish, climb.board, state, limits, lambda: bound.cancelled))
        climb.climb(MEANWHILE)
        if (columns := result(future, climb.check)) and climb.take(columns):
            climb.closed.clear()
    climb.climb_by_two(rounds - BESIDE - MEANWHILE, lane)


def ended(climb: Climb, bound: Bound) -> str:
    """Which end it was; proved only when nothing above the score is left but rounding."""
    if climb.best is not None and bound.value - climb.best.score_units <= 1e-4 * abs(bound.value):
        return "proved"
    return climb.ended
