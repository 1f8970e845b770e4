"""The sessions of a week's document, as models."""

from __future__ import annotations

from typing import Literal

from pydantic import Field

from setwright.catalogue.entries import Limb
from setwright.solver.brief.schema import Weekday
from setwright.solver.evaluation.week import Entry
from setwright.solver.sheets.document.week_fields import (
    Drops,
    ExerciseId,
    Many,
    Part,
    RepRange,
    RestSeconds,
    Rir,
    Seconds,
    Sets,
    Technique,
)


class WayDone(Part):
    """An exercise and how it is done on a day."""

    exercise: ExerciseId
    sets: Sets
    reps: RepRange
    rir: Rir
    rest_seconds: RestSeconds
    technique: Technique = "straight"
    drops: Drops = 0
    paired_with: ExerciseId | None = None


class WeekLine(Part):
    """One line of a card."""

    order: int = 1
    group: str = ""
    place: Literal[1, 2] = 1
    exercise: ExerciseId
    name: str = ""
    sets: Sets
    reps: RepRange
    rir: Rir
    rest_seconds: RestSeconds
    technique: Technique = "straight"
    drops: Drops = 0
    limb: Limb = "both"
    paired_with: ExerciseId | None = None
    ramp_up_sets: int = 0
    seconds: Seconds = 0
    load: str | None = None
    """As the card says it, with its unit; null where nothing is said."""
    ramp_up: str | None = None
    """The ramp-up sets by their loads, as the card says them; left out where the loads are not known."""
    plates: str | None = None
    """The plates of each end; left out where the brief does not say them all, or the load has none."""
    why: str = ""
    swaps: Many[ExerciseId] = ()

    def as_entry(self) -> Entry:
        """The line as the week's own value."""
        low, high = self.reps
        return Entry(
            exercise=self.exercise,
            sets=self.sets,
            reps=(low, high),
            rir=self.rir,
            rest=self.rest_seconds,
            technique=self.technique,
            drops=self.drops,
            partner=self.paired_with,
        )


class SecondsByKind(Part):
    """What a session's seconds are spent on."""

    warm_up: Seconds = 0
    ramp_up: Seconds = 0
    lifting: Seconds = 0
    resting: Seconds = 0
    change_over: Seconds = 0


class WeekDay(Part):
    """One session; weekday null where the days may be in any order."""

    weekday: Weekday | None = None
    minutes: int = 0
    seconds: Seconds = 0
    warm_up_seconds: Seconds = 0
    ramp_up_seconds: Seconds = 0
    seconds_by_kind: SecondsByKind = Field(default_factory=SecondsByKind)
    entries: Many[WeekLine]
