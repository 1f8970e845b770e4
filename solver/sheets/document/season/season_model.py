"""A season's document, `setwright.season/1`, as models: what `setwright schema season` prints."""

from __future__ import annotations

from typing import Annotated, Literal

from pydantic import Field

from setwright.solver.brief.schema import Emphasis, IsoDate, Weekday
from setwright.solver.sheets.document.week_fields import Many, Part, Seconds
from setwright.solver.sheets.document.week_model import Pair

SCHEMA = "setwright.season/1"
HalfSets = Annotated[float, Field(ge=0, multiple_of=0.5)]


class SeasonDay(Part):
    """A session of a block's week."""

    weekday: Weekday
    minutes: int
    equipment: Many[str]
    """Ids of a kit or of items; empty where the brief's own are meant."""


class SeasonBlockMuscle(Part):
    """A muscle in a block: its weekly sets in a full week, and in each week from the first to the lighter one."""

    muscle: str
    emphasis: Emphasis
    sets: HalfSets
    by_week: Many[HalfSets]


class SeasonBlockPart(Part):
    """Weeks in a row that are planned by one brief."""

    number: int
    first: IsoDate
    last: IsoDate
    weeks: int
    lighter_week: IsoDate
    """The first day of the lighter week that ends the block."""
    minutes: int
    """Minutes a week of its leanest week."""
    days: Many[SeasonDay]
    specialised: Many[str]
    held: Many[str]
    words: str
    """A phrase of days, minutes and emphases for `setwright week`; all else of the brief goes beside it."""
    muscles: Many[SeasonBlockMuscle]


class SeasonGap(Part):
    """A week that belongs to no block."""

    first: IsoDate
    last: IsoDate
    minutes: int


class SeasonTurn(Part):
    """A muscle to be specialised, its place among those wanted, and the blocks in which it is."""

    muscle: str
    place: int
    blocks: Many[int]


class SeasonReference(Part):
    """A reference week: what a set took in it."""

    minutes: int
    days: int
    sets: int
    exercise_seconds: Seconds
    seconds_per_set: float
    overhead_seconds: Seconds
    """Seconds of a session that no exercise takes."""


class SeasonMadeBy(Part):
    """What a season was made with: the same of all these gives the same season."""

    version: str
    catalogue: str
    evidence: str
    seed: int


class SeasonDocument(Part):
    """A span of weeks in training blocks.

    Worth, bound and gap: weighted index points times weeks; `gap_share` is the gap as a share of the bound.
    """

    schema_: Literal["setwright.season/1"] = Field(alias="schema")
    made_by: SeasonMadeBy
    first: IsoDate
    last: IsoDate
    weeks: int
    block_weeks: Pair
    blocks: Many[SeasonBlockPart]
    between: Many[SeasonGap]
    turns: Many[SeasonTurn]
    worth: float
    bound: float
    gap: float
    gap_share: float
    proof: Literal["OPTIMAL", "FEASIBLE", "UNKNOWN"]
    """CP-SAT's word on the last choice of blocks, whose weeks were taken at most as good as their bounds."""
    references: Many[SeasonReference]
