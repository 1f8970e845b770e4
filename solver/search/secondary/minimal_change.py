"""The week nearest another one: the least change among the weeks that keep a share of the best's stimulus."""

from __future__ import annotations

import math
import time
from collections.abc import Iterator
from dataclasses import dataclass

from setwright.solver.auditing import Audit, audit
from setwright.solver.evaluation.week import Entry, Week
from setwright.solver.linear.columns import Assignment, Column, DayGroup, Instance, pair_columns
from setwright.solver.search.initial_solution import widened
from setwright.solver.search.limits import Limits
from setwright.solver.search.neighbourhood_search import NeighbourhoodSearch, Stopped
from setwright.solver.search.neighbourhoods import Neighbourhood, neighbourhoods
from setwright.solver.search.secondary.member_names import change, like_named

MARGIN = 300
"""Score units by which the model's tangents may lie above the true curve."""
A_SET = 10
"""What a set more or less weighs against another rest or technique at equal sets."""


@dataclass(frozen=True)
class NearestWeek:
    """The nearest week found, its change in sets, the best score there was and the floor kept (score units)."""

    audit: Audit
    change: int
    best_units: int
    floor: int


def nearest_week(lns: NeighbourhoodSearch, previous: Week, share: float, limits: Limits) -> NearestWeek:
    """The week of least change from `previous` with score >= the climb's best - share * its stimulus.

    Change is the sum over exercises and days of |sets - sets before|. `previous` has one session for each of the
    brief's days, empty where the day is new; exercises that the brief now closes count as changed. Raises ValueError
    when the days differ in number. The same input gives the same week.
    """
    if lns.best is None:
        raise ValueError("settling near another week starts from a solved one")
    instance, best = lns.instance, lns.best
    if len(previous.days) != len(instance.resolved.days):
        raise ValueError(f"the previous week has {len(previous.days)} days, the brief {len(instance.resolved.days)}")
    floor = math.ceil(best.score_units - share * best.stimulus_units)
    settling = Settling(widened(lns, old_columns(instance, previous), limits), previous, floor)
    settling.start(best)
    settling.run(limits)
    return NearestWeek(settling.best, settling.change, best.score_units, floor)


class Settling:
    """The nearest week so far, on a climb of its own."""

    def __init__(self, lns: NeighbourhoodSearch, previous: Week, floor: int) -> None:
        self.lns, self.previous, self.floor = lns, previous, floor
        self.before = sets_before(lns.instance, previous)
        self.costs = {j: self.cost(column) for j, column in enumerate(lns.model.columns)}

    def start(self, best: Audit) -> None:
        """From the previous week itself where it is good enough, else from the best one."""
        resolved = self.lns.instance.resolved
        self.best, self.change = best, change(best.evaluated.week, self.previous)
        before = audit(resolved, self.previous)
        if not before.broken and before.score_units >= self.floor:
            self.best, self.change = before, 0
        else:
            self.take(self.lns.chosen)

    def cost(self, column: Column) -> int:
        """What a column adds to the change when it is taken: ten for each set, one for another way of doing them."""
        total = 0
        for assignment in column.assignments:
            before = self.before.get((assignment.cls, column.group))
            sets = before.sets if before else 0
            total += A_SET * (abs(assignment.prescription.sets - sets) - sets)
            total += before is not None and not same_way(before, assignment, len(column.assignments) == 2)
        return total

    def take(self, columns: frozenset[int]) -> bool:
        """Keep these columns if their week is sound, good enough, and nearer; at equal change if it scores more."""
        found = like_named(self.lns, columns, self.previous, self.floor)
        if found.broken or found.score_units < self.floor:
            return False
        moved = change(found.evaluated.week, self.previous)
        if (moved, -found.score_units) >= (self.change, -self.best.score_units):
            return False
        self.best, self.change, self.lns.chosen = found, moved, columns
        return True

    def run(self, limits: Limits) -> None:
        """Neighbourhoods of the week, the whole of it first, until the work is spent or nothing is changed."""
        days = len(self.lns.instance.resolved.days)
        todo = neighbourhoods(days, limits.columns)
        whole = Neighbourhood(tuple(range(days)), max(8, limits.columns // days))
        try:
            for turn in range(1 + limits.rounds // 2):
                if not self.change:
                    return
                self.lns.check()
                self.try_days(whole if turn == 0 else next(todo), limits.work * (4 if turn == 0 else 1))
        except Stopped:
            pass

    def try_days(self, place: Neighbourhood, work: float) -> None:
        """Seek less change in one neighbourhood."""
        program = self.lns.program(place)
        program.hint(self.lns.chosen)
        program.minimise(self.costs, self.floor + min(MARGIN, (self.best.score_units - self.floor) // 2))
        seen: list[frozenset[int]] = []
        program.solve(work, max(0.1, self.lns.until - time.monotonic()), seen.append)
        for columns in reversed(seen):
            if self.take(columns):
                return


def same_way(before: Entry, assignment: Assignment, paired: bool) -> bool:
    """Whether an atom is done as the entry was: rest, technique and drops alike, alone or in a pair."""
    prescription = assignment.prescription
    now = (prescription.rest, prescription.technique, prescription.drops, paired)
    return now == (before.rest, before.technique, before.drops, before.partner is not None)


def sets_before(instance: Instance, previous: Week) -> dict[tuple[int, int], Entry]:
    """(class, day) -> the previous week's entry, for those exercises that are still open on the day."""
    classes = {member.id: i for i, cls in enumerate(instance.classes) for member in cls.members}
    found: dict[tuple[int, int], Entry] = {}
    for day, entries in enumerate(previous.days):
        for entry in entries:
            cls = classes.get(entry.exercise)
            if cls is not None and instance.classes[cls].prescriptions[instance.like_of[day]]:
                found.setdefault((cls, day), entry)
    return found


def old_columns(instance: Instance, previous: Week) -> Iterator[Column]:
    """The columns of the previous week's exercises on their days, its pairs as pairs."""
    before = sets_before(instance, previous)
    for (cls, day), entry in before.items():
        for prescription in instance.classes[cls].prescriptions[instance.like_of[day]]:
            if not prescription.paired:
                yield Column(day, (Assignment(cls, prescription),))
        if entry.partner is not None:
            yield from old_pairs(instance, before, cls, day, entry.partner)


def old_pairs(
    instance: Instance, before: dict[tuple[int, int], Entry], cls: int, day: int, partner: str
) -> Iterator[Column]:
    """Every way to do one pair of the previous week as a pair again."""
    others = [c for (c, d), entry in before.items() if d == day and entry.exercise == partner]
    like = instance.like_of[day]
    for other in others:
        halves = [Assignment(c, o) for c in (cls, other) for o in instance.classes[c].prescriptions[like] if o.paired]
        yield from pair_columns(instance, DayGroup(day, like, (day,)), halves)
