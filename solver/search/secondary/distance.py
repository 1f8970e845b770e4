"""How far two weeks are apart: the share of their lines that the other lacks, on the days that match best."""

from __future__ import annotations

import itertools
from functools import cache

from setwright.solver.evaluation.week import Week
from setwright.solver.linear.columns import Instance

Kinds = tuple[frozenset[int], ...]
"""For each day the classes in use: exercises that the model cannot tell apart count as one."""


def kinds_of(instance: Instance, week: Week) -> Kinds:
    """The classes of a week's exercises on each day."""
    classes = {member.id: i for i, cls in enumerate(instance.classes) for member in cls.members}
    return tuple(frozenset(classes[entry.exercise] for entry in day) for day in week.days)


def lines(kinds: Kinds) -> int:
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


def without(one: Kinds, two: Kinds) -> float:
    """The share, 0 to 1, of the first week's exercises that the second does without."""
    mine = exercises(one)
    return 1.0 - len(mine & exercises(two)) / len(mine) if mine else 0.0


def matchings(days: int) -> tuple[tuple[int, ...], ...]:
    """Every matching of the days of weeks of up to four days; for longer ones the days as they stand and turned."""
    if days <= 4:
        return tuple(itertools.permutations(range(days)))
    return tuple(tuple((day + turn) % days for day in range(days)) for turn in range(days))
