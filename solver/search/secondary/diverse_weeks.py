"""Weeks apart: other weeks within a share of the best, each clearly different from those before it."""

from __future__ import annotations

import math
import time
from collections.abc import Iterator
from dataclasses import dataclass

from setwright.solver.linear.columns import Atom, Board, Column
from setwright.solver.search.limits import Limits
from setwright.solver.search.neighbourhood_search import Climb, Stopped
from setwright.solver.search.secondary.distance import (
    Kinds,
    distance,
    exercises,
    kinds_of,
    lines,
    matchings,
    shared,
)
from setwright.solver.search.neighbourhoods import Neighbourhood, neighbourhoods
from setwright.solver.search.initial_solution import widened
from setwright.solver.linear.linear_model import combined
from setwright.solver.auditing import Audit, audit
from setwright.solver.evaluation.week import Entry, Week

LEAST_DISTANCE = 0.3
"""The share of lines in which two weeks must differ to be clearly different (convention)."""
LEAST_OTHER = 0.2
"""The share of the earlier week's exercises that a clearly different one must do without (convention)."""
MARGIN = 300
"""Score units by which the model's tangents may lie above the true curve."""


@dataclass(frozen=True)
class Apart:
    """Another week, and what sets it apart from the first, exercises that the model cannot tell apart left aside."""

    audit: Audit
    distance: float
    gains: tuple[str, ...]
    """Its exercises that the first has not, by id in the catalogue's order."""
    lacks: tuple[str, ...]


def weeks_apart(
    climb: Climb, first: Audit, count: int, share: float, limits: Limits, no_longer: bool = False
) -> tuple[Apart, ...]:
    """Up to `count` weeks with score >= first - share * its stimulus, clearly different from all before, best first.

    `no_longer` keeps the week's seconds within the first's. The same input gives the same weeks; fewer where the work
    finds no more.
    """
    floor = math.ceil(first.score_units - share * first.stimulus_units)
    most = seconds(first) if no_longer else None
    kept = [first]
    found: list[Apart] = []
    for _ in range(count):
        straying = Straying(climb, first, [kinds_of(climb.board, k.view.week) for k in kept], floor, most, limits)
        other = straying.run(limits)
        if other is None:
            break
        found.append(from_first(climb.board, first, other))
        kept.append(other)
    return tuple(sorted(found, key=lambda a: -a.audit.score_units))


def from_first(board: Board, first: Audit, other: Audit) -> Apart:
    """What sets a week apart from the first."""
    one, two = (kinds_of(board, audit.view.week) for audit in (first, other))
    gains = only_in(board, other, exercises(two) - exercises(one))
    return Apart(other, distance(one, two), gains, only_in(board, first, exercises(one) - exercises(two)))


def only_in(board: Board, found: Audit, classes: frozenset[int]) -> tuple[str, ...]:
    """A week's exercises of some classes, in the catalogue's order."""
    used = {entry.exercise for entry in found.view.week.entries}
    wanted = {member.id for cls in sorted(classes) for member in board.classes[cls].members}
    return tuple(e for e in board.terms.catalogue.exercises if e in used and e in wanted)


class Straying:
    """Away from the first week by neighbourhoods: first far enough from all kept weeks, then better."""

    def __init__(
        self, climb: Climb, first: Audit, kept: list[Kinds], floor: int, most: int | None, limits: Limits
    ) -> None:
        board = climb.board
        columns = tuple(columns_of(board, first.view.week))
        self.board, self.kept, self.floor, self.most = board, kept, floor, most
        self.climb = widened(climb, columns, limits)
        place = {column: j for j, column in enumerate(self.climb.sheet.columns)}
        self.climb.chosen = frozenset(place[column] for column in columns)
        self.best, self.over = first, self.excess(first)
        self.overs = [self.climb.sheet.variable(100) for _ in kept]
        self.posted: set[tuple[int, tuple[int, ...]]] = set()
        for week in range(len(kept)):
            for matching in matchings(len(board.terms.days)):
                self.post(week, matching)
        self.post_exercises()
        if most is not None:
            self.post_seconds(most)

    # ---- rows

    def post_exercises(self) -> None:
        """Hold the exercises shared with each kept week, wherever they stand."""
        sheet = self.climb.sheet
        used = {cls: sheet.variable(1) for cls in sorted(frozenset().union(*map(exercises, self.kept)))}
        for cell in sheet.cells:
            for cls, y in used.items():
                here = {j: 1 for j in sheet.by_cell[cell.index] if any(a.cls == cls for a in sheet.columns[j].atoms)}
                sheet.row("apart", combined(here, {y: -1}), high=0)
        for kinds, over in zip(self.kept, self.overs, strict=True):
            mine = exercises(kinds)
            row = combined({used[cls]: 1 for cls in sorted(mine)}, {over: -1})
            sheet.row("apart", row, high=allowed(len(mine), LEAST_OTHER))

    def post(self, week: int, matching: tuple[int, ...]) -> None:
        """Hold the lines shared with a kept week under one matching of days: of its lines, and of the week's own."""
        if (week, matching) in self.posted:
            return
        self.posted.add((week, matching))
        sheet, kinds, over = self.climb.sheet, self.kept[week], self.overs[week]
        same = {j: sum(a.cls in kinds[matching[c.cell]] for a in c.atoms) for j, c in enumerate(sheet.columns)}
        sheet.row("apart", combined(same, {over: -1}), high=allowed(lines(kinds)))
        keep = round(100 * (1.0 - LEAST_DISTANCE))
        own = {j: 100 * same[j] - keep * len(c.atoms) for j, c in enumerate(sheet.columns)}
        sheet.row("apart", combined(own, {over: -100}), high=0)

    def post_seconds(self, most: int) -> None:
        """Hold the week's seconds within those given."""
        sheet, days = self.climb.sheet, self.board.terms.days
        given = {g: -2 for g in sheet.given if g is not None}
        sheet.row("apart", combined(*sheet.work, given), high=2 * (most - sum(day.warm_up for day in days)))

    # ---- weeks

    def excess(self, found: Audit) -> int:
        """The lines or exercises too many that a week shares with the kept ones."""
        kinds = kinds_of(self.board, found.view.week)
        return sum(self.excess_over(kinds, kept) for kept in self.kept)

    def excess_over(self, kinds: Kinds, kept: Kinds) -> int:
        by_lines = shared(kinds, kept)[0] - allowed(min(lines(kinds), lines(kept)))
        mine = exercises(kept)
        by_exercises = len(mine & exercises(kinds)) - allowed(len(mine), LEAST_OTHER)
        return max(0, by_lines, by_exercises)

    def take(self, columns: frozenset[int]) -> bool:
        """Keep these columns if their week is sound, good enough, and further away or, as far, better."""
        found = audit(self.board.terms, self.climb.week(columns))
        if found.broken or found.score_units < self.floor or (self.most is not None and seconds(found) > self.most):
            return False
        kinds = kinds_of(self.board, found.view.week)
        for week, kept in enumerate(self.kept):
            self.post(week, shared(kinds, kept)[1])
        over = self.excess(found)
        if (over, -found.score_units) >= (self.over, -self.best.score_units):
            return False
        self.best, self.over, self.climb.chosen = found, over, columns
        return True

    def run(self, limits: Limits) -> Audit | None:
        """The other week, or None where the work did not get far enough away."""
        days = len(self.board.terms.days)
        todo = neighbourhoods(days, limits.columns)
        try:
            for _ in range(2 * limits.rounds):
                if not self.over:
                    break
                self.climb.check()
                self.try_days(next(todo), limits.work)
            if self.over:
                return None
            for over in self.overs:
                self.climb.sheet.high[over] = 0
            for _ in range(limits.rounds // 2):
                self.climb.check()
                self.try_days(next(todo), limits.work)
        except Stopped:
            if self.over:
                return None
        return self.best

    def try_days(self, place: Neighbourhood, work: float) -> None:
        """Go further away in one neighbourhood, or once far enough seek a better week there."""
        program = self.climb.program(place)
        program.hint(self.climb.chosen)
        if self.over:
            program.minimise(dict.fromkeys(self.overs, 1), self.floor + min(MARGIN, self.room() // 2))
        else:
            program.maximise()
        seen: list[frozenset[int]] = []
        program.solve(work, max(0.1, self.climb.until - time.monotonic()), seen.append)
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
    return sum(found.view.seconds(day.index) for day in found.view.terms.days)


def columns_of(board: Board, week: Week) -> Iterator[Column]:
    """The columns that a week found by the model is made of."""
    classes = {member.id: i for i, cls in enumerate(board.classes) for member in cls.members}
    for day, entries in enumerate(week.days):
        here = {entry.exercise: entry for entry in entries}
        for entry in entries:
            atom = atom_of(board, classes[entry.exercise], day, entry)
            if entry.partner is None:
                yield Column(day, (atom,))
            elif classes[entry.exercise] < classes[entry.partner]:
                other = atom_of(board, classes[entry.partner], day, here[entry.partner])
                yield Column(day, (atom, other))


def atom_of(board: Board, cls: int, day: int, entry: Entry) -> Atom:
    """The class's option that an entry was made from."""
    wanted = (entry.sets, entry.rest, entry.technique, entry.drops, entry.partner is not None)
    options = board.classes[cls].options[board.group_of[day]]
    return next(Atom(cls, o) for o in options if (o.sets, o.rest, o.technique, o.drops, o.paired) == wanted)
