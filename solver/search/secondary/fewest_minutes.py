"""Efficiency's second step: the fewest minutes that keep a share of the stimulus, and what none can be below."""

from __future__ import annotations

import math
from collections.abc import Iterable
from dataclasses import dataclass
from functools import partial

from setwright.solver.engines.build import day_sheet, week_sheet
from setwright.solver.linear.columns import Board
from setwright.solver.engines import highs
from setwright.solver.search.limits import Limits
from setwright.solver.search.neighbourhood_search import Climb, Stopped
from setwright.solver.search.worker import Lane, result
from setwright.solver.search.neighbourhoods import Neighbourhood, neighbourhoods
from setwright.solver.linear.linear_model import Expression, Sheet
from setwright.solver.auditing import Audit, audit
from setwright.solver.evaluation.finding import UNITS

MARGIN = 300
"""Score units by which the model's tangents may lie above the true curve."""
COLUMNS = 1_600
"""Columns on all days that HiGHS sees."""


@dataclass(frozen=True)
class Shortened:
    """The shortest week found, the best score before, and the floor that was kept (score units)."""

    audit: Audit
    best_units: int
    floor: int
    seconds: int
    least_seconds: int
    """No week that keeps the floor takes fewer; 0 where nothing is proven."""

    @property
    def best_score(self) -> float:
        """The score before the minutes were cut, in index points."""
        return self.best_units / UNITS

    @property
    def gap_share(self) -> float:
        """The share of the seconds by which a shorter week is not ruled out."""
        return 1.0 - self.least_seconds / self.seconds


class Shortening:
    """The shortest week so far that keeps the floor, on a climb's columns."""

    def __init__(self, climb: Climb, best: Audit) -> None:
        self.climb, self.best, self.terms = climb, best, climb.board.terms
        self.floor = math.ceil(best.score_units - (1.0 - self.terms.keep_share) * best.stimulus_units)
        self.current, self.columns = best, climb.chosen

    def take(self, seen: Iterable[frozenset[int]]) -> None:
        """Keep the last of some weeks that is sound, good enough and shorter."""
        for columns in reversed(tuple(seen)):
            trial = audit(self.terms, self.climb.week(columns))
            if not trial.broken and trial.score_units >= self.floor and total(trial) < total(self.current):
                self.current, self.columns = trial, columns
                break

    def try_days(self, place: Neighbourhood) -> None:
        """The shortest week that one neighbourhood of the current one holds."""
        climb = self.climb
        climb.check()
        climb.chosen = self.columns
        program = climb.program(place)
        program.hint(self.columns)
        program.minimise(half_seconds(climb.sheet), self.floor + MARGIN)
        seen: list[frozenset[int]] = []
        program.solve(climb.limits.work, climb.limits.seconds, seen.append)
        self.take(seen)

    def at_once(self) -> tuple[frozenset[int], ...]:
        """HiGHS's shortest week over the best columns of all days."""
        climb, limits = self.climb, self.climb.limits
        most = COLUMNS // len(self.terms.days)
        kept = sorted({j for day in climb.candidates.ranked for j in day[:most]} | climb.candidates.must)
        sheet = day_sheet(climb.board, [climb.candidates.columns[j] for j in kept])
        found = highs.least(
            sheet, half_seconds(sheet), self.floor + MARGIN, limits.leap_nodes, limits.seconds, climb.stopped
        )
        if found.amounts is None:
            return ()
        return (frozenset(j for j, amount in zip(kept, found.amounts, strict=True) if amount > 0.5),)


def shorten(climb: Climb, limits: Limits, side_by_side: bool = True) -> Shortened:
    """From the climb's best week, the fewest seconds with score >= best - (1 - share) * stimulus."""
    if climb.best is None:
        raise AssertionError("shortening starts from a week")
    work, lane, least = Shortening(climb, climb.best), Lane(side_by_side), 0
    todo = neighbourhoods(len(work.terms.days), limits.columns)
    rounds = limits.rounds // 4
    try:
        seeking = lane.begin(work.at_once) if limits.leap_nodes else None
        proving = lane.begin(partial(least_seconds, climb.board, work.floor, limits))
        for _ in range(rounds):
            work.try_days(next(todo))
        if seeking:
            seen = result(seeking, climb.check)
            work.take(seen)
        for _ in range(rounds):
            work.try_days(next(todo))
        least = result(proving, climb.check)
    except Stopped:
        pass
    finally:
        fault = lane.end()
    if fault:
        raise fault
    return Shortened(work.current, work.best.score_units, work.floor, total(work.current), least)


def least_seconds(board: Board, floor: int, limits: Limits) -> int:
    """Seconds that no week of at least `floor` score units is below, by branching on the week without days."""
    sheet = week_sheet(board)
    found = highs.least(sheet, half_seconds(sheet), floor, limits.nodes, limits.seconds)
    if not math.isfinite(found.bound):
        return 0
    # Days may stand empty where no rule keeps them even, and then take no warm-up.
    days = board.terms.days if len(board.terms.days) == 1 or not board.terms.off("day-share") else ()
    return max(0, math.ceil(-found.bound / 2) + sum(day.warm_up for day in days))


def half_seconds(sheet: Sheet) -> Expression:
    """A week's half seconds without its warm-ups, less what those give up."""
    found: Expression = {}
    for cell, seconds in enumerate(sheet.work):
        given = sheet.given[cell]
        found |= dict(seconds) | ({given: -2} if given is not None else {})
    return found


def total(found: Audit) -> int:
    """The week's seconds."""
    return sum(found.view.seconds(day.index) for day in found.view.terms.days)
