"""A week's document, `setwright.week/1`, as models: what is read, and what `setwright schema week` prints.

A field with a default may be left out where a week is read; `setwright week --json` writes them all, `alternatives`
only where they were asked for, a line's `ramp_up` only where its load is known, `replan` by `setwright replan` alone.
"""

from __future__ import annotations

from typing import Annotated, Any, Literal

from pydantic import Field

from setwright.solver.brief.defaults import GOAL
from setwright.solver.brief.schema import Emphasis, Goal, RuleAsk
from setwright.solver.sheets.document.day_model import WayDone, WeekDay
from setwright.solver.sheets.document.week_fields import (
    Many,
    Part,
    Seconds,
)

SCHEMA = "setwright.week/1"
Pair = Annotated[Many[int], Field(min_length=2, max_length=2)]
Band = Annotated[Many[float | None], Field(min_length=2, max_length=2)]


class WeekMuscle(Part):
    """One muscle's week; band null where no band is sought, its upper end null where it is open."""

    muscle: str
    emphasis: Emphasis | Literal["counted"]
    sets: float
    direct_sets: float
    days: int
    band: Band | None
    index: int
    interval: Pair


class SearchLimits(Part):
    """How hard the search worked; the names are those of the document's first version."""

    search: str = ""
    rounds: int = 0
    work: float = 0.0
    columns: int = 0
    nodes: int = 0
    theme_nodes: int = 0
    leap_nodes: int = 0
    settle_nodes: int = 0


class MadeBy(Part):
    """What a week was made with: the same of all these gives the same week."""

    version: str = ""
    catalogue: str = ""
    evidence: str = ""
    seed: int = 0
    limits: SearchLimits = Field(default_factory=SearchLimits)


class RuleCost(Part):
    """What a rule costs the week, in index points."""

    rule: str
    cost: float


class Overridden(Part):
    """A rule that the brief turned off, made hard or priced itself."""

    id: str
    said: RuleAsk
    sentence: str = ""


class Missed(Part):
    """A scored rule that the week misses, and what that costs in index points."""

    id: str
    sentence: str
    text: str
    cost: float


class Shortened(Part):
    """What the minutes were cut from: scores in index points, and the weeks' seconds."""

    best_score: float
    floor: float
    keep_share: float
    seconds: Seconds
    least_seconds: Seconds = 0


class MuscleSets(Part):
    """A muscle and how many weekly sets more, or fewer below zero, it has."""

    muscle: str
    sets: float


class Alternative(Part):
    """Another good week, and what it has and costs against the first."""

    rank: int
    score: float
    stimulus: float
    cost: float
    stimulus_cost: float
    seconds_more: int
    distance: float
    gains: Many[str]
    lacks: Many[str]
    sets_more: Many[MuscleSets]
    days: Many[WeekDay]
    muscles: Many[WeekMuscle]


class ChangedLine(Part):
    """A line of a replanned day before and after; null where it was not there, or is no more."""

    day: str
    before: WayDone | None
    after: WayDone | None


class BelowBand(Part):
    """A muscle that a replanned week leaves below its band, in weekly sets."""

    muscle: str
    sets: float
    band_from: float
    sets_planned: float


class Replan(Part):
    """How a week was replanned: its days by name, what changed, and what it gave up for few changes."""

    done: Many[str]
    missed: Many[str]
    replanned: Many[str]
    changed_lines: int
    changes: Many[ChangedLine]
    below_band: Many[BelowBand]
    given_up: float
    """Index points of score."""
    keep_share: float
    pins_dropped: Many[str]


class WeekDocument(Part):
    """A week with its brief, what it is worth, and how it was made."""

    # `schema` is a method of pydantic's models: the field has another name inside, and its own in JSON.
    schema_name: Literal["setwright.week/1"] = Field(alias="schema")
    made_by: MadeBy = Field(default_factory=MadeBy)
    brief: dict[str, Any]
    """Read by the brief's own model."""
    assumed: Many[str] = ()
    goal: Goal = GOAL
    stimulus: float = 0.0
    interval: Pair = (0, 0)
    score: float = 0.0
    bound: float | None = None
    gap: float | None = None
    gap_share: float | None = None
    ended_by: Literal["proved", "work limit", "time limit", "stopped", "changed by hand"] = "changed by hand"
    costs: Many[RuleCost] = ()
    days: Many[WeekDay]
    muscles: Many[WeekMuscle] = ()
    swaps_digest: str | None = None
    """Tells whether swaps were changed since the week was written; null in a document older than the field."""
    overridden: Many[Overridden] = ()
    missed: Many[Missed] = ()
    clearance_needed: bool = False
    private_left_out: bool = False
    best_without_pairs: float | None = None
    shortened: Shortened | None = None
    alternatives: Many[Alternative] = ()
    replan: Replan | None = None
