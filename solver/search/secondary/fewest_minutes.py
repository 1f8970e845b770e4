"""Efficiency's second step: the fewest minutes that keep a share of the stimulus, and what none can be below."""

from __future__ import annotations

import math
from collections.abc import Iterable
from dataclasses import dataclass
from functools import partial

from setwright.solver.auditing import Audit, audit
from setwright.solver.engines import highs
from setwright.solver.engines.build import day_model, week_model
from setwright.solver.evaluation.finding import UNITS
from setwright.solver.linear.columns import Instance
from setwright.solver.linear.linear_model import Expression, LinearModel
from setwright.solver.search.limits import Limits
from setwright.solver.search.neighbourhood_search import NeighbourhoodSearch, Stopped
from setwright.solver.search.neighbourhoods import Neighbourhood, neighbourhoods
from setwright.solver.search.worker import Worker, result

MARGIN = 300
"""Score units by which the model's tangents may lie above the true curve."""
COLUMNS = 1_600
"""Columns on all days that HiGHS sees."""


@dataclass(frozen=True)
class ShortestWeek:
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

    def __init__(self, lns: NeighbourhoodSearch, best: Audit) -> None:
        self.lns, self.best, self.resolved = lns, best, lns.instance.resolved
        self.floor = math.ceil(best.score_units - (1.0 - self.resolved.keep_share) * best.stimulus_units)
        self.current, self.columns = best, lns.chosen

    def take(self, seen: Iterable[frozenset[int]]) -> None:
        """Keep the last of some weeks that is sound, good enough and shorter."""
        for columns in reversed(tuple(seen)):
            trial = audit(self.resolved, self.lns.week(columns))
            if not trial.broken and trial.score_units >= self.floor and total(trial) < total(self.current):
                self.current, self.columns = trial, columns
                break

    def try_days(self, place: Neighbourhood) -> None:
        """The shortest week that one neighbourhood of the current one holds."""
        lns = self.lns
        lns.check()
        lns.chosen = self.columns
        program = lns.program(place)
        program.hint(self.columns)
        program.minimise(half_seconds(lns.model), self.floor + MARGIN)
        seen: list[frozenset[int]] = []
        program.solve(lns.limits.work, lns.limits.seconds, seen.append)
        self.take(seen)

    def at_once(self) -> tuple[frozenset[int], ...]:
        """HiGHS's shortest week over the best columns of all days."""
        lns, limits = self.lns, self.lns.limits
        most = COLUMNS // len(self.resolved.days)
        kept = sorted({j for day in lns.candidates.ranked for j in day[:most]} | lns.candidates.must)
        model = day_model(lns.instance, [lns.candidates.columns[j] for j in kept])
        found = highs.least(
            model, half_seconds(model), self.floor + MARGIN, limits.heuristic_nodes, limits.seconds, lns.stopped
        )
        if found.amounts is None:
            return ()
        return (frozenset(j for j, amount in zip(kept, found.amounts, strict=True) if amount > 0.5),)


def fewest_minutes_week(lns: NeighbourhoodSearch, limits: Limits, side_by_side: bool = True) -> ShortestWeek:
    """From the climb's best week, the fewest seconds with score >= best - (1 - share) * stimulus."""
    if lns.best is None:
        raise AssertionError("shortening starts from a week")
    work, worker, least = Shortening(lns, lns.best), Worker(side_by_side), 0
    todo = neighbourhoods(len(work.resolved.days), limits.columns)
    rounds = limits.rounds // 4
    try:
        seeking = worker.begin(work.at_once) if limits.heuristic_nodes else None
        proving = worker.begin(partial(least_seconds, lns.instance, work.floor, limits))
        for _ in range(rounds):
            work.try_days(next(todo))
        if seeking:
            seen = result(seeking, lns.check)
            work.take(seen)
        for _ in range(rounds):
            work.try_days(next(todo))
        least = result(proving, lns.check)
    except Stopped:
        pass
    finally:
        fault = worker.end()
    if fault:
        raise fault
    return ShortestWeek(work.current, work.best.score_units, work.floor, total(work.current), least)


def least_seconds(instance: Instance, floor: int, limits: Limits) -> int:
    """Seconds that no week of at least `floor` score units is below, by branching on the week without days."""
    model = week_model(instance)
    found = highs.least(model, half_seconds(model), floor, limits.nodes, limits.seconds)
    if not math.isfinite(found.bound):
        return 0
    # Days may stand empty where no rule keeps them even, and then take no warm-up.
    days = instance.resolved.days if len(instance.resolved.days) == 1 or not instance.resolved.off("day-share") else ()
    return max(0, math.ceil(-found.bound / 2) + sum(day.warm_up for day in days))


def half_seconds(model: LinearModel) -> Expression:
    """A week's half seconds without its warm-ups, less what those give up."""
    found: Expression = {}
    for group, seconds in enumerate(model.work):
        given = model.given[group]
        found |= dict(seconds) | ({given: -2} if given is not None else {})
    return found


def total(found: Audit) -> int:
    """The week's seconds."""
    return sum(found.evaluated.seconds(day.index) for day in found.evaluated.resolved.days)
