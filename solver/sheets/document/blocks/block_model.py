"""A block's document, `setwright.block/1`, as models: what is read, and what `setwright schema block` prints."""

from __future__ import annotations

from typing import Any, Literal

from pydantic import Field

from setwright.solver.brief.schema import IsoDate, Unit, Weekday
from setwright.solver.evaluation.week import Entry
from setwright.solver.sheets.document.week_fields import (
    Drops,
    ExerciseId,
    Many,
    Part,
    Repetitions,
    RepRange,
    RestSeconds,
    Rir,
    Seconds,
    Sets,
    Technique,
)
from setwright.solver.sheets.document.week_model import Band, MadeBy

SCHEMA = "setwright.block/1"


class BlockTarget(Part):
    """What every set of a line is planned at: repetitions, or slow breaths of a hold; load null where none is known."""

    reps: Repetitions
    load: float | None
    step: Literal["find", "begin", "same", "more", "next", "lighter", "top"]
    text: str = ""


class BlockLine(Part):
    """One line of a session."""

    exercise: ExerciseId
    name: str = ""
    sets: Sets
    reps: RepRange
    rir: Rir
    rest_seconds: RestSeconds
    technique: Technique = "straight"
    drops: Drops = 0
    paired_with: ExerciseId | None = None
    target: BlockTarget | None = None

    def as_entry(self) -> Entry:
        """The line as the week's own value."""
        low, high = self.reps
        way = (self.rest_seconds, self.technique, self.drops, self.paired_with)
        return Entry(self.exercise, self.sets, (low, high), self.rir, *way)


class BlockDay(Part):
    """One session; weekday null where the days may be in any order."""

    weekday: Weekday | None = None
    minutes: int = 0
    seconds: Seconds = 0
    entries: Many[BlockLine]


class BlockMuscle(Part):
    """One muscle's weekly sets against the week's own band; null where none is sought."""

    muscle: str
    sets: float
    band: Band | None


class BlockWeekPart(Part):
    """One week: a week off has neither brief nor days."""

    number: int
    starts: IsoDate | None
    ends: IsoDate | None
    kind: Literal["build", "lighter", "return", "minimum", "travel", "short", "off"]
    note: str
    sets: int
    rir: Many[int]
    stimulus: float
    brief: dict[str, Any] | None
    """Read by the brief's own model: what the week is audited against."""
    days: Many[BlockDay]
    muscles: Many[BlockMuscle]


class SpanPart(Part):
    """Days that are not as usual, both ends included."""

    kind: Literal["off", "travel", "short", "minimum"]
    first: IsoDate
    last: IsoDate
    kit: Many[str] = ()
    sessions: int | None = None
    minutes: int | None = None


class BlockAskPart(Part):
    """What was asked of the block."""

    weeks: int
    starts: IsoDate | None
    lighter_every: int
    spans: Many[SpanPart]
    break_weeks_before: int
    now: dict[str, float]
    shifted: bool


class BlockDocument(Part):
    """A block: what was asked, the solved week's brief, the weeks in order, the rule they follow."""

    # `schema` is a method of pydantic's models: the field has another name inside, and its own in JSON.
    schema_name: Literal["setwright.block/1"] = Field(alias="schema")
    made_by: MadeBy = Field(default_factory=MadeBy)
    ask: BlockAskPart
    brief: dict[str, Any]
    assumed: Many[str] = ()
    unit: Unit
    below_solved: bool
    """Whether the last build week stays below the solved one, because so few sets are done now."""
    base: Many[BlockDay]
    """The solved week; its lines have no targets."""
    weeks: Many[BlockWeekPart]
    progression: str
    conventions: Many[str]
    clearance_needed: bool
    private_left_out: bool
