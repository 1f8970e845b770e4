"""Which days of a week are set free in each round, by one fixed seed."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from random import Random

SEED = 11
"""Of the neighbourhoods' own random numbers: every search draws the same ones."""


@dataclass(frozen=True)
class Neighbourhood:
    """Days set free, with so many columns open on each; `used` opens only columns of classes already in the week."""

    days: tuple[int, ...]
    columns: int
    used: bool = False


def neighbourhoods(days: int, columns: int) -> Iterator[Neighbourhood]:
    """Neighbourhoods without end, the same on every call: mostly two days, sometimes one wide or the whole week.

    `days` is the number of days in the week, `columns` the usual number of columns open on each free day.
    """
    random = Random(SEED)
    narrow = columns
    while True:
        draw = random.random()
        columns = narrow * random.choice((1, 2))
        if days == 1:
            yield Neighbourhood((0,), columns * random.choice((2, 3, 4)))
        elif draw < 0.70:
            yield Neighbourhood(tuple(sorted(random.sample(range(days), 2))), columns)
        elif draw < 0.82:
            yield Neighbourhood((random.randrange(days),), 3 * columns)
        elif draw < 0.90 and days > 3:
            yield Neighbourhood(tuple(sorted(random.sample(range(days), 3))), max(30, columns // 2))
        else:
            yield Neighbourhood(tuple(range(days)), columns, used=True)
