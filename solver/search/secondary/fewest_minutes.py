"""Efficiency's second step: the fewest minutes that keep a share of the stimulus, and what none can be below."""

from __future__ import annotations

import math
from dataclasses import dataclass
from functools import partial

from setwright.solver.auditing import Audit, audit
from setwright.solver.engines import highs
from setwright.solver.engines.build import day_model, week_model
from setwright.solver.evaluation.finding import UNITS
from setwright.solver.linear.instance import Instance
from setwright.solver.linear.linear_model import Expression, LinearModel
from setwright.solver.search.neighbourhood.neighbourhood_search import NeighbourhoodSearch
from setwright.solver.search.neighbourhood.neighbourhood_solver import (
    TANGENT_MARGIN,
    Chosen,
    LeastSum,
)
from setwright.solver.search.neighbourhood.neighbourhoods import Neighbourhood, neighbourhoods
from setwright.solver.search.solve_options import SolveOptions
from setwright.solver.search.stopping import Interrupted
from setwright.solver.search.worker import Worker, result

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


def fewest_minutes_week(lns: NeighbourhoodSearch, options: SolveOptions) -> ShortestWeek:
    """From a search's best week, the fewest seconds with score >= best - (1 - keep share) * stimulus.

    The search is left as it is. Raises ValueError when it has no week.
    """
    if lns.best is None:
        raise ValueError("minutes can only be cut from a solved week")
    shorter, worker, limits, least = _ShorterWeek(lns, lns.best), Worker(options.workers), options.limits, 0
    check = lns.solver.signal.check
    drawn = neighbourhoods(lns.days, limits.columns)
    rounds = limits.rounds // 4
    try:
        seeking = worker.begin(partial(shorter.over_all_days, options)) if limits.heuristic_nodes else None
        proving = worker.begin(partial(least_seconds, lns.instance, shorter.floor, options))
        for _ in range(rounds):
            shorter.search(next(drawn), limits.work)
        if seeking and (chosen := result(seeking, check)) is not None:
            shorter.accept(chosen)
        for _ in range(rounds):
            shorter.search(next(drawn), limits.work)
        least = result(proving, check)
    except Interrupted:
        pass
    finally:
        fault = worker.end()
    if fault:
        raise fault
    found = shorter.best
    return ShortestWeek(found, lns.best.score_units, shorter.floor, found.evaluated.week_seconds, least)


def least_seconds(instance: Instance, floor: int, options: SolveOptions) -> int:
    """Seconds that no week of at least `floor` score units is below, by branching on the week without days.

    0 where nothing is proven.
    """
    model = week_model(instance)
    limits = options.limits
    looks = limits.looks_for(len(model.columns))
    found = highs.least(model, half_seconds(model), floor, limits.nodes, options.seconds, options.stopped, looks)
    if not math.isfinite(found.bound):
        return 0
    # Days may stand empty where no rule keeps them even, and then take no warm-up.
    days = instance.resolved.days if len(instance.resolved.days) == 1 or not instance.resolved.off("day-share") else ()
    return max(0, math.ceil(-found.bound / 2) + sum(day.overhead for day in days))


def half_seconds(model: LinearModel) -> Expression:
    """A week's half seconds, without its warm-ups as planned and less what a full day gives up of them."""
    found: Expression = {}
    for group, seconds in enumerate(model.work):
        given = model.given[group]
        found |= dict(seconds) | ({given: -2} if given is not None else {})
    return found


class _ShorterWeek:
    """The shortest week so far that keeps the floor, among a search's candidates."""

    def __init__(self, lns: NeighbourhoodSearch, best: Audit) -> None:
        resolved = lns.instance.resolved
        self.floor = math.ceil(best.score_units - (1.0 - resolved.keep_share) * best.stimulus_units)
        self.best = best
        self._chosen, self._solver = lns.chosen, lns.solver
        self._least = LeastSum(half_seconds(lns.solver.model), self.floor + TANGENT_MARGIN)

    def accept(self, columns: Chosen) -> bool:
        """Whether the week of these columns is sound, scores enough and is shorter; it is the shortest then."""
        solver = self._solver
        found = audit(solver.instance.resolved, solver.week(columns))
        if found.broken or found.score_units < self.floor:
            return False
        if found.evaluated.week_seconds >= self.best.evaluated.week_seconds:
            return False
        self.best, self._chosen = found, columns
        return True

    def search(self, place: Neighbourhood, work: float) -> None:
        """Keep the shortest week that one neighbourhood of the current one holds. Raises Interrupted."""
        self._solver.search(place, self._chosen, work, self.accept, self._least)

    def over_all_days(self, options: SolveOptions) -> Chosen | None:
        """HiGHS's shortest week over the best candidates of all days; None where it finds none."""
        solver = self._solver
        instance, candidates, limits = solver.instance, solver.candidates, options.limits
        most = COLUMNS // len(instance.resolved.days)
        kept = sorted({j for day in candidates.ranked for j in day[:most]} | candidates.must)
        model = day_model(instance, [candidates.columns[j] for j in kept])
        found = highs.least(
            model, half_seconds(model), self._least.floor, limits.heuristic_nodes, options.seconds, options.stopped
        )
        return None if found.chosen is None else frozenset(kept[i] for i in found.chosen)
