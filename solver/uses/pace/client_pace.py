"""A client's pace as values: each part of the clock with its interval, what could not be told, and the clock itself."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

from setwright.solver.brief.schema import Clock

Part = Literal["warm_up", "seconds_per_rep", "pair_change", "rest_drift", "change_drift", "spare"]
Basis = Literal["set ends", "session minutes"]


@dataclass(frozen=True)
class FittedPart:
    """One part of the clock in seconds, with its 90 % interval.

    `rest_drift` is added to each rest that is asked for, `change_drift` to each change of exercise; `spare` is what a
    whole session takes beyond all other parts, which holds both of them.
    """

    part: Part
    value: float
    low: float
    high: float
    planned: float
    """What the plan took it to be; 0 for drifts."""
    intervals: int
    """The number of intervals, or for spare of sessions, that it was told from."""


@dataclass(frozen=True)
class RestTaken:
    """A rest that was asked for, and what was taken: the median over its intervals, in seconds."""

    asked: float
    taken: float
    intervals: int


@dataclass(frozen=True)
class HeldBack:
    """Planned minutes against taken ones in sessions that the pace was not read from: mean error, mean distance."""

    fitted_on: int
    sessions: int
    error_before: float
    error_after: float
    """Minutes taken less minutes planned, on average."""
    distance_before: float
    distance_after: float
    """The same without its sign, averaged over the sessions."""


@dataclass(frozen=True)
class ClientPace:
    """What a log tells of a client's clock."""

    basis: Basis
    sessions: int
    intervals: int
    left_out: int
    """Intervals between logged set ends that could not be used."""
    parts: tuple[FittedPart, ...]
    untold: tuple[Part, ...]
    """Parts that the log cannot tell, which stay as planned."""
    rests: tuple[RestTaken, ...]
    clock: Clock
    """The `clock` table for a brief, within the brief's limits; a field is set where it was told."""
    limited: tuple[Part, ...]
    """Parts whose value in the clock is at a limit of the brief, or is kept as planned because it may not be less."""
    held_back: HeldBack | None
    """None with too few sessions to hold any back."""

    def part(self, name: Part) -> FittedPart | None:
        """One part, or None where the log cannot tell it."""
        return next((part for part in self.parts if part.part == name), None)


@dataclass(frozen=True)
class NotEnough:
    """Too little is logged: what there is and what is needed, either of the two."""

    sessions_with_set_ends: int
    intervals: int
    sessions_with_minutes: int
    sessions_needed: int
    intervals_needed: int
