"""The week nearest another one: the least change among the weeks that keep a share of the best's stimulus."""

from __future__ import annotations

import math
from collections.abc import Iterator
from dataclasses import dataclass

from setwright.solver.auditing import Audit, audit
from setwright.solver.evaluation.week import Entry, Week
from setwright.solver.linear.columns import Column, DayGroup, pair_columns
from setwright.solver.linear.instance import Assignment, Instance
from setwright.solver.search.encoding import open_entries
from setwright.solver.search.limits import Limits
from setwright.solver.search.neighbourhood.neighbourhood_search import NeighbourhoodSearch
from setwright.solver.search.neighbourhood.neighbourhood_solver import (
    TANGENT_MARGIN,
    Chosen,
    LeastSum,
    NeighbourhoodSolver,
)
from setwright.solver.search.neighbourhood.neighbourhoods import Neighbourhood, neighbourhoods
from setwright.solver.search.secondary.member_names import change, named_as_before
from setwright.solver.search.solve_options import SolveOptions
from setwright.solver.search.stopping import Interrupted

A_SET = 10
"""What a set more or less weighs against another rest or technique at equal sets."""
WHOLE_WEEK_TIMES = 4
"""Times the usual work that the first neighbourhood, the whole week, gets."""


@dataclass(frozen=True)
class NearestWeek:
    """The nearest week found, its change in sets, the best score there was and the floor kept (score units)."""

    audit: Audit
    change: int
    best_units: int
    floor: int


def nearest_week(lns: NeighbourhoodSearch, previous: Week, share: float, options: SolveOptions) -> NearestWeek:
    """The week of least change from `previous` with score >= the search's best - share * its stimulus.

    Change is the sum over exercises and days of |sets - sets before|. `previous` has one session for each of the
    brief's days, empty where the day is new; exercises that the brief now closes count as changed. The search is left
    as it is. Raises ValueError when the search has no week or the days differ in number.
    """
    if lns.best is None:
        raise ValueError("a week near another can only be found from a solved one")
    instance, best = lns.instance, lns.best
    if len(previous.days) != len(instance.resolved.days):
        raise ValueError(f"the previous week has {len(previous.days)} days, the brief {len(instance.resolved.days)}")
    floor = math.ceil(best.score_units - share * best.stimulus_units)
    solver = lns.solver.widened(ways_to_repeat(instance, previous), options.signal())
    nearer = _NearerWeek(solver, lns.chosen, best, previous, floor)
    nearer.run(options.limits)
    return NearestWeek(nearer.best, nearer.change, best.score_units, floor)


def ways_to_repeat(instance: Instance, previous: Week) -> Iterator[Column]:
    """Every way to do the exercises of an earlier week on their days, as far as they are open; its pairs as pairs."""
    before = open_entries(instance, previous)
    for (cls, day), entry in before.items():
        for prescription in instance.classes[cls].prescriptions[instance.like_of[day]]:
            if not prescription.paired:
                yield Column(day, (Assignment(cls, prescription),))
        if entry.partner is not None:
            yield from _pairs_again(instance, before, cls, day, entry.partner)


class _NearerWeek:
    """The nearest week so far, over candidates of its own."""

    def __init__(self, solver: NeighbourhoodSolver, chosen: Chosen, best: Audit, previous: Week, floor: int) -> None:
        """Starts from the previous week itself where it is good enough, else from the best one."""
        self._solver, self._chosen, self._previous, self._floor = solver, chosen, previous, floor
        self._before = open_entries(solver.instance, previous)
        self._costs = {j: self._cost(column) for j, column in enumerate(solver.model.columns)}
        self.best, self.change = best, change(best.evaluated.week, previous)
        as_it_was = audit(solver.instance.resolved, previous)
        if not as_it_was.broken and as_it_was.score_units >= floor:
            self.best, self.change = as_it_was, 0
        else:
            self.accept(chosen)

    def accept(self, columns: Chosen) -> bool:
        """Whether the week of these columns is sound, scores enough and is nearer, or as near and better; kept then."""
        found = named_as_before(self._solver, columns, self._previous, self._floor)
        if found.broken or found.score_units < self._floor:
            return False
        moved = change(found.evaluated.week, self._previous)
        if (moved, -found.score_units) >= (self.change, -self.best.score_units):
            return False
        self.best, self.change, self._chosen = found, moved, columns
        return True

    def run(self, limits: Limits) -> None:
        """Search neighbourhoods, the whole week first, until the work limit or until nothing is changed."""
        days = len(self._solver.instance.resolved.days)
        drawn = neighbourhoods(days, limits.columns)
        try:
            if self.change:
                whole = Neighbourhood(tuple(range(days)), max(8, limits.columns // days))
                self._search(whole, WHOLE_WEEK_TIMES * limits.work)
            for _ in range(limits.rounds // 2):
                if not self.change:
                    return
                self._search(next(drawn), limits.work)
        except Interrupted:
            pass

    def _search(self, place: Neighbourhood, work: float) -> None:
        """Seek less change in one neighbourhood."""
        room = self.best.score_units - self._floor
        least = LeastSum(self._costs, self._floor + min(TANGENT_MARGIN, room // 2))
        self._solver.search(place, self._chosen, work, self.accept, least)

    def _cost(self, column: Column) -> int:
        """What a column adds to the change when it is taken: ten for each set, one for another way of doing them."""
        total = 0
        for assignment in column.assignments:
            before = self._before.get((assignment.cls, column.group))
            sets = before.sets if before else 0
            total += A_SET * (abs(assignment.prescription.sets - sets) - sets)
            if before is not None and not _same_way(before, assignment, len(column.assignments) == 2):
                total += 1
        return total


def _same_way(before: Entry, assignment: Assignment, paired: bool) -> bool:
    """Whether an exercise is done with the same rest and technique, alone or in a pair as before."""
    p = assignment.prescription
    return (p.rest, p.technique, p.drops, paired) == (
        before.rest,
        before.technique,
        before.drops,
        before.partner is not None,
    )


def _pairs_again(
    instance: Instance, before: dict[tuple[int, int], Entry], cls: int, day: int, partner: str
) -> Iterator[Column]:
    """Every way to do one pair of the previous week as a pair again."""
    others = [c for (c, d), entry in before.items() if d == day and entry.exercise == partner]
    like = instance.like_of[day]
    for other in others:
        halves = [Assignment(c, p) for c in (cls, other) for p in instance.classes[c].prescriptions[like] if p.paired]
        yield from pair_columns(instance, DayGroup(day, like, (day,)), halves)
