"""Weeks apart: other weeks within a share of the best, each clearly different from those before it."""

from __future__ import annotations

import math
import time
from collections.abc import Iterator
from dataclasses import dataclass

from setwright.solver.auditing import Audit, audit
from setwright.solver.evaluation.week import Entry, Week
from setwright.solver.linear.columns import Assignment, Column, Instance
from setwright.solver.linear.linear_model import combined
from setwright.solver.search.initial_solution import widened
from setwright.solver.search.limits import Limits
from setwright.solver.search.neighbourhood_search import NeighbourhoodSearch, Stopped
from setwright.solver.search.neighbourhoods import Neighbourhood, neighbourhoods
from setwright.solver.search.secondary.distance import (
    Kinds,
    distance,
    exercises,
    kinds_of,
    lines,
    matchings,
    shared,
)

LEAST_DISTANCE = 0.3
"""The share of lines in which two weeks must differ to be clearly different (convention)."""
LEAST_OTHER = 0.2
"""The share of the earlier week's exercises that a clearly different one must do without (convention)."""
MARGIN = 300
"""Score units by which the model's tangents may lie above the true curve."""


@dataclass(frozen=True)
class DiverseWeek:
    """Another week, and what sets it apart from the first, exercises that the model cannot tell apart left aside."""

    audit: Audit
    distance: float
    gains: tuple[str, ...]
    """Its exercises that the first has not, by id in the catalogue's order."""
    lacks: tuple[str, ...]


def diverse_weeks(
    lns: NeighbourhoodSearch, first: Audit, count: int, share: float, limits: Limits, no_longer: bool = False
) -> tuple[DiverseWeek, ...]:
    """Up to `count` weeks with score >= first - share * its stimulus, clearly different from all before, best first.

    `no_longer` keeps the week's seconds within the first's. The same input gives the same weeks; fewer where the work
    finds no more.
    """
    floor = math.ceil(first.score_units - share * first.stimulus_units)
    most = seconds(first) if no_longer else None
    kept = [first]
    found: list[DiverseWeek] = []
    for _ in range(count):
        straying = Straying(lns, first, [kinds_of(lns.instance, k.evaluated.week) for k in kept], floor, most, limits)
        other = straying.run(limits)
        if other is None:
            break
        found.append(from_first(lns.instance, first, other))
        kept.append(other)
    return tuple(sorted(found, key=lambda a: -a.audit.score_units))


def from_first(instance: Instance, first: Audit, other: Audit) -> DiverseWeek:
    """What sets a week apart from the first."""
    one, two = (kinds_of(instance, audit.evaluated.week) for audit in (first, other))
    gains = only_in(instance, other, exercises(two) - exercises(one))
    return DiverseWeek(other, distance(one, two), gains, only_in(instance, first, exercises(one) - exercises(two)))


def only_in(instance: Instance, found: Audit, classes: frozenset[int]) -> tuple[str, ...]:
    """A week's exercises of some classes, in the catalogue's order."""
    used = {entry.exercise for entry in found.evaluated.week.entries}
    wanted = {member.id for cls in sorted(classes) for member in instance.classes[cls].members}
    return tuple(e for e in instance.resolved.catalogue.exercises if e in used and e in wanted)


class Straying:
    """Away from the first week by neighbourhoods: first far enough from all kept weeks, then better."""

    def __init__(
        self, lns: NeighbourhoodSearch, first: Audit, kept: list[Kinds], floor: int, most: int | None, limits: Limits
    ) -> None:
        instance = lns.instance
        columns = tuple(columns_of(instance, first.evaluated.week))
        self.instance, self.kept, self.floor, self.most = instance, kept, floor, most
        self.lns = widened(lns, columns, limits)
        place = {column: j for j, column in enumerate(self.lns.model.columns)}
        self.lns.chosen = frozenset(place[column] for column in columns)
        self.best, self.over = first, self.excess(first)
        self.overs = [self.lns.model.variable(100) for _ in kept]
        self.posted: set[tuple[int, tuple[int, ...]]] = set()
        for week in range(len(kept)):
            for matching in matchings(len(instance.resolved.days)):
                self.post(week, matching)
        self.post_exercises()
        if most is not None:
            self.post_seconds(most)

    # ---- rows

    def post_exercises(self) -> None:
        """Hold the exercises shared with each kept week, wherever they stand."""
        model = self.lns.model
        used = {cls: model.variable(1) for cls in sorted(frozenset().union(*map(exercises, self.kept)))}
        for group in model.groups:
            for cls, y in used.items():
                here = {
                    j: 1 for j in model.by_group[group.index] if any(a.cls == cls for a in model.columns[j].assignments)
                }
                model.constrain("apart", combined(here, {y: -1}), high=0)
        for kinds, over in zip(self.kept, self.overs, strict=True):
            mine = exercises(kinds)
            constrain = combined({used[cls]: 1 for cls in sorted(mine)}, {over: -1})
            model.constrain("apart", constrain, high=allowed(len(mine), LEAST_OTHER))

    def post(self, week: int, matching: tuple[int, ...]) -> None:
        """Hold the lines shared with a kept week under one matching of days: of its lines, and of the week's own."""
        if (week, matching) in self.posted:
            return
        self.posted.add((week, matching))
        model, kinds, over = self.lns.model, self.kept[week], self.overs[week]
        same = {j: sum(a.cls in kinds[matching[c.group]] for a in c.assignments) for j, c in enumerate(model.columns)}
        model.constrain("apart", combined(same, {over: -1}), high=allowed(lines(kinds)))
        keep = round(100 * (1.0 - LEAST_DISTANCE))
        own = {j: 100 * same[j] - keep * len(c.assignments) for j, c in enumerate(model.columns)}
        model.constrain("apart", combined(own, {over: -100}), high=0)

    def post_seconds(self, most: int) -> None:
        """Hold the week's seconds within those given."""
        model, days = self.lns.model, self.instance.resolved.days
        given = {g: -2 for g in model.given if g is not None}
        model.constrain("apart", combined(*model.work, given), high=2 * (most - sum(day.warm_up for day in days)))

    # ---- weeks

    def excess(self, found: Audit) -> int:
        """The lines or exercises too many that a week shares with the kept ones."""
        kinds = kinds_of(self.instance, found.evaluated.week)
        return sum(self.excess_over(kinds, kept) for kept in self.kept)

    def excess_over(self, kinds: Kinds, kept: Kinds) -> int:
        by_lines = shared(kinds, kept)[0] - allowed(min(lines(kinds), lines(kept)))
        mine = exercises(kept)
        by_exercises = len(mine & exercises(kinds)) - allowed(len(mine), LEAST_OTHER)
        return max(0, by_lines, by_exercises)

    def take(self, columns: frozenset[int]) -> bool:
        """Keep these columns if their week is sound, good enough, and further away or, as far, better."""
        found = audit(self.instance.resolved, self.lns.week(columns))
        if found.broken or found.score_units < self.floor or (self.most is not None and seconds(found) > self.most):
            return False
        kinds = kinds_of(self.instance, found.evaluated.week)
        for week, kept in enumerate(self.kept):
            self.post(week, shared(kinds, kept)[1])
        over = self.excess(found)
        if (over, -found.score_units) >= (self.over, -self.best.score_units):
            return False
        self.best, self.over, self.lns.chosen = found, over, columns
        return True

    def run(self, limits: Limits) -> Audit | None:
        """The other week, or None where the work did not get far enough away."""
        days = len(self.instance.resolved.days)
        todo = neighbourhoods(days, limits.columns)
        try:
            for _ in range(2 * limits.rounds):
                if not self.over:
                    break
                self.lns.check()
                self.try_days(next(todo), limits.work)
            if self.over:
                return None
            for over in self.overs:
                self.lns.model.high[over] = 0
            for _ in range(limits.rounds // 2):
                self.lns.check()
                self.try_days(next(todo), limits.work)
        except Stopped:
            if self.over:
                return None
        return self.best

    def try_days(self, place: Neighbourhood, work: float) -> None:
        """Go further away in one neighbourhood, or once far enough seek a better week there."""
        program = self.lns.program(place)
        program.hint(self.lns.chosen)
        if self.over:
            program.minimise(dict.fromkeys(self.overs, 1), self.floor + min(MARGIN, self.room() // 2))
        else:
            program.maximise()
        seen: list[frozenset[int]] = []
        program.solve(work, max(0.1, self.lns.until - time.monotonic()), seen.append)
        for columns in reversed(seen):
            if self.take(columns):
                return

    def room(self) -> int:
        return self.best.score_units - self.floor


def allowed(count: int, share: float = LEAST_DISTANCE) -> int:
    """The most of so many that a week clearly different may share."""
    return math.floor((1.0 - share) * count + 1e-9)


def seconds(found: Audit) -> int:
    """The week's seconds."""
    return sum(found.evaluated.seconds(day.index) for day in found.evaluated.resolved.days)


def columns_of(instance: Instance, week: Week) -> Iterator[Column]:
    """The columns that a week found by the model is made of."""
    classes = {member.id: i for i, cls in enumerate(instance.classes) for member in cls.members}
    for day, entries in enumerate(week.days):
        here = {entry.exercise: entry for entry in entries}
        for entry in entries:
            assignment = assignment_of(instance, classes[entry.exercise], day, entry)
            if entry.partner is None:
                yield Column(day, (assignment,))
            elif classes[entry.exercise] < classes[entry.partner]:
                other = assignment_of(instance, classes[entry.partner], day, here[entry.partner])
                yield Column(day, (assignment, other))


def assignment_of(instance: Instance, cls: int, day: int, entry: Entry) -> Assignment:
    """The class's option that an entry was made from."""
    wanted = (entry.sets, entry.rest, entry.technique, entry.drops, entry.partner is not None)
    prescriptions = instance.classes[cls].prescriptions[instance.like_of[day]]
    return next(Assignment(cls, o) for o in prescriptions if (o.sets, o.rest, o.technique, o.drops, o.paired) == wanted)
