"""The columns of the model: a class of exercises, done one way, in a group of days; or two as a pair."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

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


def single_columns(instance: Instance, groups: tuple[DayGroup, ...], halves: bool) -> Iterator[Column]:
    """Columns of one assignment; halves of pairs too where `halves` says so."""
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
    """The pairs that some halves of pairs in a group of days can make.

    A half alone is credited as beside the best of partners, so halves relax real pairs.
    """
    for i, a in enumerate(halves):
        for b in halves[i + 1 :]:
            same = (a.prescription.sets, a.prescription.rest) == (b.prescription.sets, b.prescription.rest)
            if same and a.cls != b.cls and _slots_differ(instance, a, b) and instance.fit(a.cls, b.cls):
                yield paired_column(instance, group.index, group.like, (a, b))


def paired_column(instance: Instance, group: int, like: int, halves: tuple[Assignment, Assignment]) -> Column:
    """The column of two halves of a pair, each credited and timed as its partner lets it be."""
    a, b = sorted(halves, key=lambda half: half.cls)
    return Column(group, (instance.beside(like, a, b.cls), instance.beside(like, b, a.cls)))


def _slots_differ(instance: Instance, a: Assignment, b: Assignment) -> bool:
    return instance.classes[a.cls].exercise.slot.id != instance.classes[b.cls].exercise.slot.id
