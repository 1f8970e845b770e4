"""The columns of the model: classes of exercises, done one way, in a cell of days."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from functools import cached_property

from setwright.catalogue.entries import Exercise
from setwright.solver.evaluation.prescriptions import Option, options_of
from setwright.solver.evaluation.pairs import WEIGHTS, fits, places
from setwright.solver.rules import disliked, liked
from setwright.solver.evaluation.resolved_brief import DayTerms, Terms

REGIONS = ("push", "pull", "lower")


@dataclass(frozen=True)
class Class:
    """Exercises that the model cannot tell apart, with their options on each group of days (None: closed)."""

    members: tuple[Exercise, ...]
    options: tuple[tuple[Option, ...], ...]
    second_choice: tuple[bool, ...]

    @property
    def exercise(self) -> Exercise:
        return self.members[0]


@dataclass(frozen=True)
class Atom:
    """One exercise of a class done one way."""

    cls: int
    option: Option


@dataclass(frozen=True)
class Column:
    """What may stand in a cell: one atom, or the two of a pair."""

    cell: int
    atoms: tuple[Atom, ...]


@dataclass(frozen=True)
class Cell:
    """Days that the model does not tell apart; `regions` are those with a multi-joint lift, where fixed."""

    index: int
    group: int
    days: tuple[int, ...]
    regions: tuple[str, ...] | None = None


@dataclass(frozen=True)
class Board:
    """The classes of a brief over its groups of like days."""

    terms: Terms
    groups: tuple[tuple[int, ...], ...]
    classes: tuple[Class, ...]

    def day(self, group: int) -> DayTerms:
        """The terms that the days of a group share."""
        return self.terms.days[self.groups[group][0]]

    @cached_property
    def group_of(self) -> dict[int, int]:
        return {day: g for g, days in enumerate(self.groups) for day in days}

    def fit(self, a: int, b: int) -> bool:
        """Whether exercises of two classes may be a pair."""
        key = (min(a, b), max(a, b))
        if key not in self._fits:
            self._fits[key] = fits(self.terms, self.classes[a].exercise, self.classes[b].exercise)
        return self._fits[key]

    @cached_property
    def _fits(self) -> dict[tuple[int, int], bool]:
        return {}


def board_of(terms: Terms) -> Board:
    """The board of a brief; days with equal terms are one group."""
    groups: dict[tuple[object, ...], list[int]] = {}
    for day in terms.days:
        key = (day.minutes, day.limit, day.warm_up, day.warm_up_give, tuple(sorted(day.items)), day.dumbbell_max)
        groups.setdefault((*key, day.focus, day.closed_regions), []).append(day.index)
    listed = tuple(tuple(days) for days in groups.values())
    first = [terms.days[days[0]] for days in listed]
    classes: dict[tuple[object, ...], list[Exercise]] = {}
    facts: dict[str, tuple[tuple[tuple[Option, ...], ...], tuple[bool, ...]]] = {}
    for exercise in terms.catalogue.exercises.values():
        options = tuple(() if terms.closed_by(exercise, day) else options_of(terms, exercise, day) for day in first)
        if not any(options):
            continue
        second = tuple(bool(o) and terms.second_choice(exercise, d) for o, d in zip(options, first, strict=True))
        facts[exercise.id] = (options, second)
        classes.setdefault((options, second, *marks(terms, exercise, first)), []).append(exercise)
    return Board(terms, listed, tuple(Class(tuple(es), *facts[es[0].id]) for es in classes.values()))


def marks(terms: Terms, exercise: Exercise, days: list[DayTerms]) -> tuple[object, ...]:
    """What else two exercises must share to be one class."""
    own = exercise.id if exercise.id in terms.pinned else ""
    common = (
        exercise.contributions,
        exercise.slot.id,
        exercise.fatigue,
        exercise.axial,
        exercise.once_a_week,
        exercise.barbell,
        own,
        liked.applies(terms, exercise, 0, days[0]),
        disliked.applies(terms, exercise, 0, days[0]),
    )
    if not terms.pairs:
        return common
    stations = tuple(sorted(places(terms, exercise, "fixed", "place")))
    return (*common, exercise.grip_limited, stations, tuple(i for i in WEIGHTS if i in exercise.needs))


def cells_of_groups(board: Board) -> tuple[Cell, ...]:
    """One cell for each group: the week without a day index."""
    return tuple(Cell(i, i, days) for i, days in enumerate(board.groups))


def cells_of_days(board: Board) -> tuple[Cell, ...]:
    """One cell for each day."""
    count = len(board.terms.days)
    return tuple(Cell(day, board.group_of[day], (day,)) for day in range(count))


def cells_of_themes(board: Board) -> tuple[Cell, ...]:
    """One cell for each group and set of regions that a day of it may have multi-joint lifts of."""
    found: list[Cell] = []
    for group, days in enumerate(board.groups):
        able = [
            region
            for region in REGIONS
            if any(c.options[group] and c.exercise.multi_joint and c.exercise.region == region for c in board.classes)
        ]
        for mask in range(2 ** len(able)):
            regions = tuple(r for i, r in enumerate(able) if mask >> i & 1)
            found.append(Cell(len(found), group, days, regions))
    return tuple(found)


def single_columns(board: Board, cells: tuple[Cell, ...], halves: bool) -> Iterator[Column]:
    """Columns of one atom; half pairs too where `halves` says so."""
    for cell in cells:
        for i, cls in enumerate(board.classes):
            e = cls.exercise
            outside = cell.regions is not None and e.multi_joint and e.region in REGIONS
            if outside and cell.regions is not None and e.region not in cell.regions:
                continue
            for option in cls.options[cell.group]:
                if halves or not option.paired:
                    yield Column(cell.index, (Atom(i, option),))


def pair_columns(board: Board, cell: Cell, halves: list[Atom]) -> Iterator[Column]:
    """The pairs that some half pairs of a cell can make."""
    for i, a in enumerate(halves):
        for b in halves[i + 1 :]:
            same = (a.option.sets, a.option.rest) == (b.option.sets, b.option.rest)
            if same and a.cls != b.cls and slots_differ(board, a, b) and board.fit(a.cls, b.cls):
                yield Column(cell.index, (a, b) if a.cls < b.cls else (b, a))


def slots_differ(board: Board, a: Atom, b: Atom) -> bool:
    return board.classes[a.cls].exercise.slot.id != board.classes[b.cls].exercise.slot.id
