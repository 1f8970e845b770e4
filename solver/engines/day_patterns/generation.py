"""Column generation: patterns are priced and added until none would raise the master problem's optimum."""

from __future__ import annotations

import math
from collections.abc import Callable

from setwright.solver.engines.build import build
from setwright.solver.engines.day_patterns.day_columns import day_columns
from setwright.solver.engines.day_patterns.master import Master
from setwright.solver.engines.day_patterns.pricing import DayPattern, best_patterns
from setwright.solver.linear.columns import undated_groups
from setwright.solver.linear.instance import Instance

ROUNDS = 60
"""Times that patterns are priced, at most."""
A_ROUND = 12
"""Patterns of a group of days that are added at once, at most."""
GAIN = 1.0
"""Score units by which a pattern must pass what its day costs to be added."""


def decomposed(
    instance: Instance,
    tell: Callable[[float], None] = lambda bound: None,
    cancelled: Callable[[], bool] = lambda: False,
) -> tuple[Master, float]:
    """The master problem with its patterns, and the least bound met, in score units, not moved outward.

    Every week is a choice of one session for each day. A session here fits its minutes with whole lifts, sets and
    ramp-ups, so that the bound is no higher than that of the week without days; all other rules are as loose as there.
    Each round's bound is the optimum plus what the best session of each day would add (Lasdon, Optimization Theory for
    Large Systems, 1970; from memory). `tell` hears each lower one. The bound is inf where HiGHS fails.
    """
    groups = undated_groups(instance)
    days = tuple(day_columns(instance, group) for group in groups)
    master = Master(build(instance, groups, (column for day in days for column in day.columns)), days)
    best, known, rest = math.inf, set[tuple[int, tuple[int, ...], int]](), dict[int, tuple[DayPattern, ...]]()
    for _ in range(ROUNDS):
        prices = None if cancelled() else master.solve()
        if prices is None:
            break
        bound, added = prices.value, False
        for group, day in enumerate(days):
            found = best_patterns(day, *master.values_of(group, prices))
            cost = float(prices.days[group])
            if found:
                bound += max(0.0, found[0].value - cost) * len(groups[group].days)
            for pattern in found[:A_ROUND]:
                key = (group, pattern.columns, pattern.trained)
                if pattern.value > cost + GAIN and key not in known:
                    known.add(key)
                    master.add(group, pattern)
                    added = True
            rest[group] = found
        if bound < best:
            best = bound
            tell(best)
        if not added:
            break
    for group, found in rest.items():
        for pattern in found:
            if (group, pattern.columns, pattern.trained) not in known:
                master.add(group, pattern)
    return master, best
