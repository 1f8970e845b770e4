"""The pricing problem: the sessions of most value that fit a day, by a knapsack for each choice of ramp-ups."""

from __future__ import annotations

from bisect import bisect_right, insort
from collections.abc import Iterator
from dataclasses import dataclass
from itertools import product

import numpy as np
from numpy.typing import NDArray

from setwright.solver.engines.day_patterns.day_columns import STEP, DayColumns
from setwright.solver.linear.columns import REGIONS

NOTHING = -1e18
"""The value of what cannot be."""
SETS_OF_REGIONS = 1 << len(REGIONS)
WORTH = 1e-6
"""A column of no more value is only of use where it trains a region."""


@dataclass(frozen=True, order=True)
class DayPattern:
    """A session as pricing sees it: its value, its columns among those of its group, its regions as bits."""

    value: float
    columns: tuple[int, ...]
    trained: int


def best_patterns(
    day: DayColumns, values: NDArray[np.float64], region_values: tuple[float, ...]
) -> tuple[DayPattern, ...]:
    """The best session for each choice of ramp-ups, the best first; the first is the best of all sessions.

    `values` are what each column of the day is worth, `region_values` what training each region is worth beside. A
    session may hold two columns of one exercise, and times are rounded down: no real one is worth more than the first.
    """
    found = {_best(day, values, region_values, ramps) for ramps in _choices(day)}
    return tuple(sorted((pattern for pattern in found if pattern is not None), reverse=True))


def _choices(day: DayColumns) -> Iterator[tuple[int, ...]]:
    """The ramp-ups that a session may give each region, 0 where it trains none."""
    asked = [sorted({0, *map(int, day.ramps[:, k])}) for k in range(len(REGIONS))]
    return (ramps for ramps in product(*asked) if sum(ramps) <= day.room)


def _best(
    day: DayColumns, values: NDArray[np.float64], region_values: tuple[float, ...], ramps: tuple[int, ...]
) -> DayPattern | None:
    """The best session with these ramp-ups, of columns that ask for no more than that; None where there is none."""
    room = (day.room - sum(ramps)) // STEP
    open_columns = np.nonzero((day.ramps <= np.array(ramps)).all(axis=1) & (day.units <= room))[0]
    items = _worth_trying(day, values, open_columns, room)
    value = np.full((SETS_OF_REGIONS, room + 1), NOTHING)
    value[0] = 0.0
    steps: list[NDArray[np.int8]] = []
    for j in items:
        value, step = _with_column(value, int(day.units[j]), int(day.trained[j]), float(values[j]))
        steps.append(step)
    total = value[:, room] + _values_of_sets(region_values)
    best = int(np.argmax(total))
    if not steps:
        return None
    columns, regions, left = [], best, room
    for j, step in zip(reversed(items), reversed(steps), strict=True):
        before = int(step[regions, left])
        if before >= 0:
            columns.append(j)
            regions, left = before, left - int(day.units[j])
    return DayPattern(float(total[best]), tuple(sorted(columns)), best)


def _values_of_sets(region_values: tuple[float, ...]) -> NDArray[np.float64]:
    """What each set of regions is worth."""
    sets = range(SETS_OF_REGIONS)
    return np.array([sum(v for k, v in enumerate(region_values) if regions >> k & 1) for regions in sets])


def _worth_trying(
    day: DayColumns, values: NDArray[np.float64], open_columns: NDArray[np.int64], room: int
) -> list[int]:
    """The columns that a best session may need, the most valuable first.

    A session holds at most `most` columns. So one that as many others match in regions, at no more time and no less
    value, is never needed: in its place one of them could stand. Of columns of no value one for its regions is enough.
    """
    most = room // max(1, int(day.units[open_columns].min(initial=room)))
    lighter: dict[int, list[int]] = {}
    found: list[int] = []
    for j in open_columns[np.argsort(-values[open_columns], kind="stable")].tolist():
        units, trained = int(day.units[j]), int(day.trained[j])
        kept = lighter.setdefault(trained, [])
        useless = values[j] <= WORTH and not trained
        if not useless and bisect_right(kept, units) < (most if values[j] > WORTH else 1):
            insort(kept, units)
            found.append(j)
    return found


def _with_column(
    value: NDArray[np.float64], units: int, trained: int, worth: float
) -> tuple[NDArray[np.float64], NDArray[np.int8]]:
    """The values of sessions where a column may be added, and from which set of regions each came, -1 where without."""
    after, step = value.copy(), np.full(value.shape, -1, np.int8)
    width = value.shape[1] - units
    for regions in range(SETS_OF_REGIONS):
        before = value[regions, :width]
        if before[-1] <= NOTHING / 2:
            continue
        into = regions | trained
        better = before + worth > after[into, units:] + 1e-9
        after[into, units:][better] = before[better] + worth
        step[into, units:][better] = regions
    return after, step
