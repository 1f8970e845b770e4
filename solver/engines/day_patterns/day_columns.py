"""The columns that may stand in one group of like days, as arrays: their time, and the ramp-up they ask for."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from setwright.catalogue.entries import Exercise
from setwright.solver.evaluation.evaluated_week import ramp_levels
from setwright.solver.linear.columns import REGIONS, Column, DayGroup, pairs_of, single_columns
from setwright.solver.linear.instance import Instance

STEP = 2
"""Half seconds in a unit of the knapsack; a column's time is rounded down, so that no session that fits is missed."""


@dataclass(frozen=True)
class DayColumns:
    """Columns that fit a day of a group alone, in their order."""

    columns: tuple[Column, ...]
    units: NDArray[np.int64]
    """The time of each without ramp-up, in units of the knapsack."""
    ramps: NDArray[np.int64]
    """For each column and region the ramp-up that its multi-joint lifts ask for, in half seconds."""
    trained: NDArray[np.int64]
    """For each column the regions it has multi-joint lifts of, as bits in the order of REGIONS."""
    room: int
    """Half seconds of a day for its columns and ramp-ups, with all of the warm-up that may be given up."""


def day_columns(instance: Instance, group: DayGroup) -> DayColumns:
    """The columns of a group of days, real pairs included, that fit a day alone."""
    day = instance.day(group.like)
    room = 2 * (day.limit - day.overhead + day.warm_up_give)
    levels = {region: ramp_levels(instance.resolved, region, day) for region in REGIONS}

    def ramp(exercises: list[Exercise], region: str) -> int:
        lifts = [e for e in exercises if e.multi_joint and e.region == region]
        return 2 * max((asked for wanted, asked in levels[region] if any(wanted(e) for e in lifts)), default=0)

    found: list[tuple[Column, int, list[int], int]] = []
    for column in (*single_columns(instance, group), *(Column(group.index, p) for p in pairs_of(instance, group.like))):
        exercises = [instance.classes[a.cls].exercise for a in column.assignments]
        ramps = [ramp(exercises, region) for region in REGIONS]
        seconds = sum(a.prescription.half_seconds for a in column.assignments)
        regions = {e.region for e in exercises if e.multi_joint}
        if seconds + sum(ramps) <= room:
            found.append((column, seconds, ramps, sum(1 << k for k, r in enumerate(REGIONS) if r in regions)))
    return DayColumns(
        columns=tuple(column for column, _, _, _ in found),
        units=np.array([seconds // STEP for _, seconds, _, _ in found], np.int64),
        ramps=np.array([ramps for _, _, ramps, _ in found], np.int64).reshape(len(found), len(REGIONS)),
        trained=np.array([bits for _, _, _, bits in found], np.int64),
        room=room,
    )
