"""A day of a resolved brief, and what is wanted of one muscle in its week."""

from __future__ import annotations

from collections.abc import Hashable
from dataclasses import dataclass


@dataclass(frozen=True)
class ResolvedDay:
    """One day: where it stands in the week, its seconds and what is at hand."""

    index: int
    weekday: str | None
    minutes: int
    limit: int
    """Seconds the session may take, general warm-up included."""
    warm_up: int
    warm_up_give: int
    items: frozenset[str]
    dumbbell_max: float | None
    focus: str | None
    closed_regions: tuple[str, ...] = ()
    """Regions whose heavy work another activity rules out."""
    avoided: frozenset[str] = frozenset()
    """Exercises that the brief avoids on this day alone."""
    rested: frozenset[str] = frozenset()
    """Muscles that get no direct set on this day."""
    trained: tuple[tuple[str, frozenset[str]], ...] = ()
    """Muscles and groups, each with its muscles, that get direct sets on this day."""
    missed: bool = False
    """Whether the session is not held."""
    last_rest: int = 0
    """Seconds of rest after a session's last set, which nobody waits for: the shortest of the goal and the brief."""

    @property
    def overhead(self) -> int:
        """The seconds of a session that its exercises and ramp-ups do not take: warm-up, less the rest at the end."""
        return self.warm_up - self.last_rest

    @property
    def kind(self) -> Hashable:
        """What like days have in common: all but their place in the week, unless muscles are to be trained on it."""
        kit = (tuple(sorted(self.items)), self.dumbbell_max)
        closed = (self.closed_regions, tuple(sorted(self.avoided)), tuple(sorted(self.rested)), self.missed)
        minutes = (self.minutes, self.limit, self.warm_up, self.warm_up_give)
        return (*minutes, *kit, self.focus, *closed, self.trained and (self.trained, self.index))

    @property
    def name(self) -> str:
        """Its weekday, mon to sun, or its number."""
        return self.weekday or f"session {self.index + 1}"


@dataclass(frozen=True)
class MuscleTarget:
    """What is wanted of one muscle; limits in weekly sets, `exact` ends are hard."""

    id: str
    emphasis: str
    weight: float
    low: float
    high: float
    exact_low: bool = False
    exact_high: bool = False
    days_at_least: int = 0
