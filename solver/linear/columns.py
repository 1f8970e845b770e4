"""The columns of the model: classes of exercises, done one way, in a cell of days."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from functools import cached_property

from setwright.catalogue.entries import Exercise
from setwright.solver.evaluation.pairs import WEIGHTS, fits, places
from setwright.solver.evaluation.prescriptions import Prescription, prescriptions_of
from setwright.solver.evaluation.resolved_brief import ResolvedBrief, ResolvedDay

REGIONS = ("push", "pull", "lower")


@dataclass(frozen=True)
class ExerciseClass:
    """Exercises that the model cannot tell apart, with their options on each group of days (None: closed)."""

    members: tuple[Exercise, ...]
    prescriptions: tuple[tuple[Prescription, ...], ...]
    second_choice: tuple[bool, ...]

    @property
    def exercise(self) -> Exercise:
        return self.members[0]


@dataclass(frozen=True)
class Assignment:
    """One exercise of a class done one way."""

    cls: int
    prescription: Prescription


@dataclass(frozen=True)
class Column:
    """What may stand in a cell: one atom, or the two of a pair."""

    group: int
    assignments: tuple[Assignment, ...]


@dataclass(frozen=True)
class DayGroup:
    """Days that the model does not tell apart; `regions` are those with a multi-joint lift, where fixed."""

    index: int
    like: int
    days: tuple[int, ...]
    regions: tuple[str, ...] | None = None


@dataclass(frozen=True)
class Instance:
    """The classes of a brief over its groups of like days."""

    resolved: ResolvedBrief
    like_days: tuple[tuple[int, ...], ...]
    classes: tuple[ExerciseClass, ...]

    def day(self, like: int) -> ResolvedDay:
        """The terms that the days of a group share."""
        return self.resolved.days[self.like_days[like][0]]

    @cached_property
    def like_of(self) -> dict[int, int]:
        return {day: g for g, days in enumerate(self.like_days) for day in days}

    @cached_property
    def class_of(self) -> dict[str, int]:
        """Exercise id -> the index of its class, for every exercise that is open on some day."""
        return {member.id: i for i, cls in enumerate(self.classes) for member in cls.members}

    def fit(self, a: int, b: int) -> bool:
        """Whether exercises of two classes may be a pair."""
        key = (min(a, b), max(a, b))
        if key not in self._fits:
            self._fits[key] = fits(self.resolved, self.classes[a].exercise, self.classes[b].exercise)
        return self._fits[key]

    @cached_property
    def _fits(self) -> dict[tuple[int, int], bool]:
        return {}


def instance_of(resolved: ResolvedBrief) -> Instance:
    """The board of a brief; days with equal terms are one group."""
    like_days: dict[tuple[object, ...], list[int]] = {}
    for day in resolved.days:
        key = (day.minutes, day.limit, day.warm_up, day.warm_up_give, tuple(sorted(day.items)), day.dumbbell_max)
        like_days.setdefault((*key, day.focus, day.closed_regions), []).append(day.index)
    listed = tuple(tuple(days) for days in like_days.values())
    first = [resolved.days[days[0]] for days in listed]
    classes: dict[tuple[object, ...], list[Exercise]] = {}
    facts: dict[str, tuple[tuple[tuple[Prescription, ...], ...], tuple[bool, ...]]] = {}
    for exercise in resolved.catalogue.exercises.values():
        prescriptions = tuple(
            () if resolved.excluded_by(exercise, day) else prescriptions_of(resolved, exercise, day) for day in first
        )
        if not any(prescriptions):
            continue
        second = tuple(
            bool(o) and resolved.second_choice(exercise, d) for o, d in zip(prescriptions, first, strict=True)
        )
        facts[exercise.id] = (prescriptions, second)
        classes.setdefault((prescriptions, second, *class_signature(resolved, exercise, first)), []).append(exercise)
    return Instance(resolved, listed, tuple(ExerciseClass(tuple(es), *facts[es[0].id]) for es in classes.values()))


def class_signature(resolved: ResolvedBrief, exercise: Exercise, days: list[ResolvedDay]) -> tuple[object, ...]:
    """What else two exercises must share to be one class."""
    own = exercise.id if exercise.id in resolved.pinned else ""
    common = (
        exercise.contributions,
        exercise.slot.id,
        exercise.fatigue,
        exercise.axial,
        exercise.once_a_week,
        exercise.barbell,
        own,
        resolved.likes(exercise),
        resolved.dislikes(exercise),
    )
    if not resolved.pairs:
        return common
    stations = tuple(sorted(places(resolved, exercise, "fixed", "place")))
    return (*common, exercise.grip_limited, stations, tuple(i for i in WEIGHTS if i in exercise.needs))


def undated_groups(instance: Instance) -> tuple[DayGroup, ...]:
    """One cell for each group: the week without a day index."""
    return tuple(DayGroup(i, i, days) for i, days in enumerate(instance.like_days))


def day_groups(instance: Instance) -> tuple[DayGroup, ...]:
    """One cell for each day."""
    count = len(instance.resolved.days)
    return tuple(DayGroup(day, instance.like_of[day], (day,)) for day in range(count))


def pattern_groups(instance: Instance) -> tuple[DayGroup, ...]:
    """One cell for each group and set of regions that a day of it may have multi-joint lifts of."""
    found: list[DayGroup] = []
    for like, days in enumerate(instance.like_days):
        able = [
            region
            for region in REGIONS
            if any(
                c.prescriptions[like] and c.exercise.multi_joint and c.exercise.region == region
                for c in instance.classes
            )
        ]
        for mask in range(2 ** len(able)):
            regions = tuple(r for i, r in enumerate(able) if mask >> i & 1)
            found.append(DayGroup(len(found), like, days, regions))
    return tuple(found)


def single_columns(instance: Instance, groups: tuple[DayGroup, ...], halves: bool) -> Iterator[Column]:
    """Columns of one atom; half pairs too where `halves` says so."""
    for group in groups:
        for i, cls in enumerate(instance.classes):
            e = cls.exercise
            outside = group.regions is not None and e.multi_joint and e.region in REGIONS
            if outside and group.regions is not None and e.region not in group.regions:
                continue
            for prescription in cls.prescriptions[group.like]:
                if halves or not prescription.paired:
                    yield Column(group.index, (Assignment(i, prescription),))


def pair_columns(instance: Instance, group: DayGroup, halves: list[Assignment]) -> Iterator[Column]:
    """The pairs that some half pairs of a cell can make."""
    for i, a in enumerate(halves):
        for b in halves[i + 1 :]:
            same = (a.prescription.sets, a.prescription.rest) == (b.prescription.sets, b.prescription.rest)
            if same and a.cls != b.cls and slots_differ(instance, a, b) and instance.fit(a.cls, b.cls):
                yield Column(group.index, (a, b) if a.cls < b.cls else (b, a))


def slots_differ(instance: Instance, a: Assignment, b: Assignment) -> bool:
    return instance.classes[a.cls].exercise.slot.id != instance.classes[b.cls].exercise.slot.id
