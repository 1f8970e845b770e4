"""The search: `search(board, limits)` -> the best week found, what no week can pass, and how it ended."""

from __future__ import annotations

import math
import time
from collections.abc import Callable
from dataclasses import dataclass

from setwright.solver.model.build import week_sheet
from setwright.solver.model.columns import Board
from setwright.solver.model.engines import highs
from setwright.solver.model.limits import Limits
from setwright.solver.model.search.bounding import Beside, Bound, prove
from setwright.solver.model.search.candidates import candidates_by_day, candidates_of
from setwright.solver.model.search.climb import Climb, Stopped
from setwright.solver.model.search.finish import daily, finish
from setwright.solver.model.search.leap import leap
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


BEFORE_LEAP = 4
"""Neighbourhoods tried before the leap, so that a fair week is at hand while HiGHS looks for a better start."""
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
    thread = Beside(lambda: prove(board, week, relaxed, limits, bound))
    if not side_by_side:
        thread.join()
    try:
        if (first and climb.take(first)) or climb.start():
            rounds = limits.rounds_for(len(board.terms.days))
            climb.climb(min(BEFORE_LEAP, rounds))
            leap(climb)
            climb.climb(rounds - BEFORE_LEAP)
        while thread.is_alive():
            climb.check()
            thread.join(0.1)
        finish(climb, bound, limits, whole)
    except Stopped:
        pass
    finally:
        # A thread still inside HiGHS when Python ends would abort the process.
        bound.cancelled = True
        thread.join()
    if thread.fault:
        raise thread.fault
    return Outcome(climb.best, bound.value, ended(climb, bound), climb)


def ended(climb: Climb, bound: Bound) -> str:
    """Which end it was; proved only when nothing above the score is left but rounding."""
    if climb.best is not None and bound.value - climb.best.score_units <= 1e-4 * abs(bound.value):
        return "proved"
    return climb.ended
