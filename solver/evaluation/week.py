"""A week as a value: what is done on which day, exactly as printed."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True)
class Entry:
    """One line of a card, in order; `partner` names the exercise it is paired with that day."""

    exercise: str
    sets: int
    reps: tuple[int, int]
    rir: int
    rest: int
    technique: str = "straight"
    drops: int = 0
    partner: str | None = None


@dataclass(frozen=True)
class Week:
    """Sessions in the order of the brief's days, each a tuple of entries in the order they are done."""

    days: tuple[tuple[Entry, ...], ...]

    @property
    def entries(self) -> tuple[Entry, ...]:
        """The entries of all days in order."""
        return tuple(entry for day in self.days for entry in day)
