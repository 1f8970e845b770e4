"""What happened in a week: sessions done and missed, and what is otherwise on the days that are left."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field

from setwright.solver.brief.schema import Pin


@dataclass(frozen=True)
class DayChange:
    """What is otherwise on one day than was planned; what is unsaid stays."""

    minutes: int | None = None
    kit: str | None = None
    """The id of the kit of the place where it is held now."""
    without: tuple[str, ...] = ()
    """Items (ids) that are taken."""
    avoid: tuple[str, ...] = ()
    """Exercises (ids) that are not to be used."""
    rested: tuple[str, ...] = ()
    """Muscles or groups (ids) that get no direct set."""


@dataclass(frozen=True)
class Happened:
    """What happened; days are their places in the week, from 0."""

    done: frozenset[int] = frozenset()
    missed: frozenset[int] = frozenset()
    changes: Mapping[int, DayChange] = field(default_factory=dict)
    """Day that is left -> what is otherwise on it."""
    pins: tuple[Pin, ...] = ()

    def left(self, days: int) -> tuple[int, ...]:
        """The days of a week of so many that are neither done nor missed."""
        return tuple(day for day in range(days) if day not in self.done and day not in self.missed)


def done_before(days: int, missed: frozenset[int], today: frozenset[int]) -> frozenset[int]:
    """The sessions taken as done where nobody says which are: those before today's, else before the last missed one."""
    until = min(today) if today else max(missed, default=0)
    return frozenset(range(min(until, days))) - missed
