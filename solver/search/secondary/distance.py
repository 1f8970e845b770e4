"""How different two weeks are: the share of their lines that the other lacks, on the days that match best."""

from __future__ import annotations

import itertools
import math
from functools import cache

from setwright.solver.evaluation.week import Week
from setwright.solver.linear.instance import Instance

Kinds = tuple[frozenset[int], ...]
"""For each day the classes in use: exercises that the model cannot tell apart count as one."""


LEAST_DISTANCE = 0.3
"""The share of lines in which two weeks must differ to be clearly different (convention)."""
LEAST_OTHER = 0.2
"""The share of the earlier week's exercises that a clearly different one must do without (convention)."""


def kinds_of(instance: Instance, week: Week) -> Kinds:
    """The classes of a week's exercises on each day; raises KeyError where the brief closes one of them."""
    return tuple(frozenset(instance.class_of[entry.exercise] for entry in day) for day in week.days)


def lines(kinds: Kinds) -> int:
    """The number of lines in a week."""
    return sum(len(day) for day in kinds)


def shared(one: Kinds, two: Kinds) -> tuple[int, tuple[int, ...]]:
    """The most lines two weeks share under any matching of days, and that matching (day of `two` for each of `one`).

    Matched by dynamic programming over the days of `two` already taken.
    """
    count = len(one)

    @cache
    def best(day: int, taken: int) -> tuple[int, tuple[int, ...]]:
        if day == count:
            return 0, ()
        found: tuple[int, tuple[int, ...]] = (-1, ())
        for other in range(count):
            if not taken >> other & 1:
                rest, places = best(day + 1, taken | 1 << other)
                total = rest + len(one[day] & two[other])
                if total > found[0]:
                    found = (total, (other, *places))
        return found

    return best(0, 0)


def distance(one: Kinds, two: Kinds) -> float:
    """The share, 0 to 1, of the shorter week's lines that the other has not, however its days are shuffled."""
    fewest = min(lines(one), lines(two))
    return 1.0 - shared(one, two)[0] / fewest if fewest else 0.0


def exercises(kinds: Kinds) -> frozenset[int]:
    """The classes in use anywhere in the week."""
    return frozenset().union(*kinds)


def allowed(count: int, least_share: float) -> int:
    """The most of `count` lines or exercises that two weeks may share that must differ in `least_share` of them."""
    return math.floor((1.0 - least_share) * count + 1e-9)


def excess_over(kinds: Kinds, kept: Kinds) -> int:
    """The lines or exercises too many that a week shares with a kept one; 0 where it is clearly different."""
    by_lines = shared(kinds, kept)[0] - allowed(min(lines(kinds), lines(kept)), LEAST_DISTANCE)
    mine = exercises(kept)
    by_exercises = len(mine & exercises(kinds)) - allowed(len(mine), LEAST_OTHER)
    return max(0, by_lines, by_exercises)


def matchings(days: int) -> tuple[tuple[int, ...], ...]:
    """Every matching of the days of weeks of up to four days; for longer ones the days as they stand and turned."""
    if days <= 4:
        return tuple(itertools.permutations(range(days)))
    return tuple(tuple((day + turn) % days for day in range(days)) for turn in range(days))
