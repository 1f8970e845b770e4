"""What a client is handed, as values; none of them holds a health note."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from datetime import date
from typing import Any

from setwright.solver.sheets.handout.coach import Coach


@dataclass(frozen=True)
class CardLine:
    """One line of a card, in words and, for programs, in numbers."""

    label: str
    """A, or A1 and A2 in a pair."""
    exercise: str
    """The exercise's id."""
    name: str
    setting: str
    cue: str
    link: str | None
    sets: int
    reps: str
    rir: int
    rest: str
    """As m:ss; 0:00 for the first of a pair."""
    technique: str
    load: str | None
    swaps: tuple[str, ...]
    """Names of what may stand in for it."""
    ramp_up: str
    why: str
    plates: str = ""
    """The plates of each end, where the brief says them all."""
    partner: str = ""
    """The name of the exercise it is done in turn with, or nothing."""
    timed: bool = False
    """Whether `reps` is how long a hold or a carry lasts, in seconds."""
    amount: tuple[int, int] = (0, 0)
    """The ends of `reps`: repetitions, or seconds where it is timed."""
    per_side: bool = False
    """Whether `reps` is counted for each side."""
    rest_seconds: int = 0


@dataclass(frozen=True)
class Session:
    """One day of the week; `minutes` used (whole, rounded up) of those `given`."""

    number: int
    weekday: str | None
    title: str
    minutes: int
    given: int
    seconds: int
    place: str
    warm_up: str
    lines: tuple[CardLine, ...]
    seconds_by_kind: tuple[tuple[str, int], ...]


@dataclass(frozen=True)
class MuscleRow:
    """One muscle's week: fractional sets, days of direct work, band (upper end None: open), index."""

    id: str
    name: str
    emphasis: str
    sets: float
    days: int
    band: tuple[float, float | None] | None
    index: int
    interval: tuple[int, int]


@dataclass(frozen=True)
class Handout:
    """A week as handed over: sessions, muscles, what it is worth, why it is so, the caution, the coach."""

    title: str
    client: str
    """The client's code; empty where none is said."""
    week: str
    goal: str
    asked: str
    sessions: tuple[Session, ...]
    muscles: tuple[MuscleRow, ...]
    index: float
    interval: tuple[int, int]
    why: tuple[str, ...]
    left_out: tuple[str, ...]
    """Names of exercises, to be read as left out by the coach, for whatever reason."""
    caution: str
    review: date | None
    start: date | None
    """Each session falls on its first weekday on or after this day; None where no date is said."""
    coach: Coach
    made_by: str
    document: Mapping[str, Any]
    """The week's JSON without private parts."""
    any_order: bool = False
    on_loads: tuple[str, ...] = ()
    """What is said once of the loads: how to take them, and how to find those that are not known."""
