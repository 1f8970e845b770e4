"""A relaxation of a brief: what gives way, and the brief that is left."""

from __future__ import annotations

from collections.abc import Callable, Iterable
from dataclasses import dataclass
from typing import Literal

from setwright.solver.brief.schema import Brief
from setwright.solver.uses.relax.brief_changes import BriefChange

Kind = Literal[
    "pin",
    "partner",
    "kit",
    "station",
    "movement",
    "muscle-day",
    "avoid",
    "rule",
    "rests",
    "sets",
    "days",
    "minutes",
    "pairs",
    "goal",
    "day",
    "weekdays",
]
"""What gives way; station: kit that cannot be carried to the client; days: those of direct work; day: one more."""


@dataclass(frozen=True)
class Relaxation:
    """One way to give way, and the brief it leaves."""

    kind: Kind
    changes: tuple[BriefChange, ...]
    brief: Brief
    minutes: int = 0
    """Minutes a week more."""
    sets: float = 0.0
    """Weekly sets given up."""


def least(make: Callable[[int], Brief | None], most: int, able: Callable[[Brief | None], bool]) -> int | None:
    """The smallest amount from 1 to `most` whose brief has a week, by bisection; None where `most` has none."""
    if most < 1 or not able(make(most)):
        return None
    low, high = 0, most
    while high - low > 1:
        middle = (low + high) // 2
        low, high = (low, middle) if able(make(middle)) else (middle, high)
    return high


def first_able(relaxations: Iterable[Relaxation], able: Callable[[Brief | None], bool]) -> Relaxation | None:
    """The first relaxation whose brief has a week; None where none has."""
    return next((relaxation for relaxation in relaxations if able(relaxation.brief)), None)
