"""A season as numbers alone: which blocks may be, what their weeks hold, what sets are worth, and what was chosen."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

SPECIALISED, HELD = "priority", "hold"
"""The two emphases of a block that a season's own limits speak of, by the brief's words."""


@dataclass(frozen=True)
class Room:
    """What a week has room for."""

    setup: int
    """Which setup it is trained in: a kit with days and minutes, of which the activities speak."""
    seconds: int
    """Seconds that exercises may take."""
    sets: int
    """Working sets at most."""


@dataclass(frozen=True)
class Candidate:
    """A block that may be chosen; all its weeks have the same room."""

    first: int
    """Its first week, counted from 0."""
    weeks: int
    room: int
    """The place of its room among the problem's."""

    @property
    def end(self) -> int:
        """The week after its last."""
        return self.first + self.weeks


@dataclass(frozen=True)
class Activity:
    """Something that sets are done of: one exercise of a setup."""

    name: str
    setup: int
    seconds: int
    """Seconds of one set with all that goes with it."""
    parts: tuple[tuple[int, int], ...]
    """(place of the muscle, hundredths of a set that it is credited)."""
    usual: int
    """Sets a week below which each missing one costs `SeasonProblem.usual_cost`."""
    most: int
    """Sets a week at most."""


@dataclass(frozen=True)
class EmphasisTerms:
    """What an emphasis means for a muscle: its weight in hundredths, and its band in half sets a week."""

    weight: int
    low: int
    high: int


@dataclass(frozen=True)
class SeasonMuscle:
    """One muscle: the emphases open to it, its turn, and what its weekly sets are worth."""

    name: str
    emphases: Mapping[str, EmphasisTerms]
    curve: tuple[tuple[int, int], ...]
    """Rising (half sets a week, hundredths of an index point), concave and joined by straight lines."""
    short_cost: int
    """Units a week for each half set below the band."""
    turn: int | None = None
    """Its place among the muscles that are to be specialised, 0 first, equal for equals; None for one that is not."""


@dataclass(frozen=True)
class SeasonProblem:
    """Blocks to choose, none overlapping, and the sets of each; worth is counted in 1/10,000 weighted index point."""

    rooms: tuple[Room, ...]
    candidates: tuple[Candidate, ...]
    activities: tuple[Activity, ...]
    muscles: tuple[SeasonMuscle, ...]
    specialised_most: int
    """Muscles specialised at a time, at most."""
    running_most: int
    """Blocks running in which a muscle may be specialised."""
    held_most: int
    """Weeks running that a muscle may be held, if another emphasis is open to it."""
    rise_between: int
    """Half sets a week that the first week of a block may have more for a muscle than the block before."""
    rise_within: int
    """Half sets a week that a week may have more for a muscle than the week before it in its block."""
    excess_cost: int
    """Units a week for each half set above a band."""
    usual_cost: int
    """Units a week for each set that an activity has less than usual."""
    missed_cost: int
    """Units for each muscle with a turn that is specialised in no block."""
    habit_tenths: int
    """The usual length of a block, in tenths of a week: of equals, the blocks nearest to it are taken."""

    @property
    def turns(self) -> tuple[int, ...]:
        """The places of the muscles that may be specialised."""
        return tuple(m for m, muscle in enumerate(self.muscles) if muscle.turn is not None)


@dataclass(frozen=True)
class WeekPlan:
    """A week of a block: each muscle's emphasis and half sets, each activity's sets, its worth and its bound."""

    emphases: tuple[str, ...]
    half_sets: tuple[int, ...]
    activity_sets: tuple[int, ...]
    worth: int
    bound: int


@dataclass(frozen=True)
class ChosenBlock:
    """A block of a season: its full week, and the half sets of each of its weeks, those of the first rising to it."""

    candidate: Candidate
    week: WeekPlan
    ramp: tuple[tuple[int, ...], ...]
    """For each week the half sets of each muscle; the lighter week, the last, stands as the week it is cut from."""


@dataclass(frozen=True)
class SeasonSolution:
    """The blocks in order, what they are worth together, and what no choice of blocks can pass."""

    blocks: tuple[ChosenBlock, ...]
    worth: int
    """Units: each week's worth with the sets of that week, less what muscles without their turn cost."""
    bound: int
    rounds: int
    """How often the blocks were chosen anew."""
    status: str
    """CP-SAT's own word on the last choice of blocks: OPTIMAL or FEASIBLE; UNKNOWN where none was found."""
