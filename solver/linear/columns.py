"""The columns of the model: a class of exercises, done one way, in a group of days; or two as a pair."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from setwright.catalogue.entries import Exercise
from setwright.solver.linear.instance import Assignment, Instance

REGIONS = ("push", "pull", "lower")


@dataclass(frozen=True)
class Column:
    """What may stand in a group of days: one assignment, or the two of a pair."""

    group: int
    assignments: tuple[Assignment, ...]


@dataclass(frozen=True)
class DayGroup:
    """Days that the model does not tell apart; `regions` are those that get a multi-joint lift, where that is fixed."""

    index: int
    like: int
    """The index of its group of like days."""
    days: tuple[int, ...]
    regions: tuple[str, ...] | None = None


def undated_groups(instance: Instance) -> tuple[DayGroup, ...]:
    """One group for each kind of day: the week without a day index."""
    return tuple(DayGroup(i, i, days) for i, days in enumerate(instance.like_days))


def day_groups(instance: Instance) -> tuple[DayGroup, ...]:
    """One group for each day."""
    count = len(instance.resolved.days)
    return tuple(DayGroup(day, instance.like_of[day], (day,)) for day in range(count))


def pattern_groups(instance: Instance) -> tuple[DayGroup, ...]:
    """One group for each kind of day and each set of regions that it may have multi-joint lifts of."""
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


def single_columns(instance: Instance, group: DayGroup) -> Iterator[Column]:
    """Columns of one assignment that is done alone."""
    for i, cls in enumerate(instance.classes):
        if not _is_outside(cls.exercise, group):
            for prescription in cls.prescriptions[group.like]:
                if not prescription.paired:
                    yield Column(group.index, (Assignment(i, prescription),))


def halves_of_pairs(instance: Instance, like: int) -> list[Assignment]:
    """What may be done as a half of a pair on days of one group, each as it is beside the best of partners."""
    return [
        Assignment(i, prescription)
        for i, cls in enumerate(instance.classes)
        for prescription in cls.prescriptions[like]
        if prescription.paired
    ]


def pairs_of(instance: Instance, like: int) -> tuple[tuple[Assignment, ...], ...]:
    """The pairs that days of one group can have, each made once for an instance."""
    if like not in instance.known_pairs:
        pairs = pair_columns(instance, DayGroup(0, like, ()), halves_of_pairs(instance, like))
        instance.known_pairs[like] = tuple(pair.assignments for pair in pairs)
    return instance.known_pairs[like]


def half_columns(instance: Instance, group: DayGroup) -> Iterator[Column]:
    """The halves of a group's pairs alone: a column for each way in which some partner lets an exercise be."""
    beside = {assignment for pair in pairs_of(instance, group.like) for assignment in pair}
    for assignment in sorted(beside, key=lambda a: (a.cls, a.prescription)):
        if not _is_outside(instance.classes[assignment.cls].exercise, group):
            yield Column(group.index, (assignment,))


def _is_outside(exercise: Exercise, group: DayGroup) -> bool:
    """Whether a group's days are to have no multi-joint lift of the exercise's region."""
    regions = group.regions
    return (
        regions is not None and exercise.multi_joint and exercise.region in REGIONS and exercise.region not in regions
    )


def pair_columns(instance: Instance, group: DayGroup, halves: list[Assignment]) -> Iterator[Column]:
    """The pairs that some halves of pairs in a group of days can make."""
    left: dict[tuple[int, int], list[Assignment]] = {}
    for half in halves:
        left.setdefault((half.prescription.sets, half.prescription.rest), []).append(half)
    for a in halves:
        same = left[a.prescription.sets, a.prescription.rest] = left[a.prescription.sets, a.prescription.rest][1:]
        for b in same:
            if a.cls != b.cls and _slots_differ(instance, a, b) and instance.fit(a.cls, b.cls):
                yield paired_column(instance, group.index, group.like, (a, b))


def paired_column(instance: Instance, group: int, like: int, halves: tuple[Assignment, Assignment]) -> Column:
    """The column of two halves of a pair, each credited and timed as its partner lets it be."""
    a, b = sorted(halves, key=lambda half: half.cls)
    return Column(group, (instance.beside(like, a, b.cls), instance.beside(like, b, a.cls)))


def _slots_differ(instance: Instance, a: Assignment, b: Assignment) -> bool:
    return instance.classes[a.cls].exercise.slot.id != instance.classes[b.cls].exercise.slot.id
