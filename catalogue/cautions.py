"""What a client's health and age ask of a week: cautions, ages and positions as frozen values."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass

JOINTS = ("shoulder", "elbow", "wrist", "lower-back", "hip", "knee", "ankle", "neck")


@dataclass(frozen=True)
class ClientLimits:
    """What cautions and an age ask of a week; each field as shipped here asks nothing."""

    closes_joints: frozenset[str] = frozenset()
    """Joints that no exercise may load hard."""
    closes_positions: frozenset[str] = frozenset()
    """Ids of positions that no exercise may be in."""
    warns_positions: frozenset[str] = frozenset()
    """Ids of positions that stay open and are to be left when they make the client unwell."""
    rir_least: int = 0
    """The fewest repetitions in reserve."""
    reps_least: int = 0
    """The fewest repetitions at the lower end of a range, so that loads stay moderate; holds are left aside."""
    techniques_off: bool = False
    """Whether drop sets and rest-pause sets are left out."""
    rest_least: int = 0
    """The shortest rest after any set, in seconds; above 0 it leaves out pairs, which go from set to set."""
    sets_most: int | None = None
    """The most sets of an exercise in a day."""


def strictest(limits: Iterable[ClientLimits]) -> ClientLimits:
    """What all of them ask together: everything that one closes, and the strictest of each number."""
    found = tuple(limits)
    most = [one.sets_most for one in found if one.sets_most is not None]
    return ClientLimits(
        closes_joints=frozenset().union(*(one.closes_joints for one in found)),
        closes_positions=frozenset().union(*(one.closes_positions for one in found)),
        warns_positions=frozenset().union(*(one.warns_positions for one in found)),
        rir_least=max((one.rir_least for one in found), default=0),
        reps_least=max((one.reps_least for one in found), default=0),
        techniques_off=any(one.techniques_off for one in found),
        rest_least=max((one.rest_least for one in found), default=0),
        sets_most=min(most) if most else None,
    )


@dataclass(frozen=True)
class Caution:
    """A joint or condition tag: what it asks of a week, whether clearance comes first, and when to see someone."""

    id: str
    name: str
    limits: ClientLimits
    needs_clearance: bool
    sentence: str
    see_first: str | None = None
    """Signs with which a doctor or physiotherapist is seen before any lifting, as the end of a sentence."""
    emergency: str | None = None
    """Signs that call for urgent medical help, as the end of a sentence."""
    aliases: tuple[str, ...] = ()


@dataclass(frozen=True)
class AgeGroup:
    """What an age asks of a week: `youngest` and `oldest` in years, both included."""

    id: str
    name: str
    youngest: int
    oldest: int
    limits: ClientLimits
    sentence: str
    least_sets: float = 0.0
    """Weekly fractional sets at which the band of a muscle at hold or normal begins at the lowest."""
    hold_days: int = 1
    """Days of direct work that a muscle at hold should have."""
    dose_sets: tuple[int, int] | None = None
    """Fewest and most sets of an exercise in a minimum dose, where they differ from the usual ones."""


def age_group_of(age: int | None, groups: Mapping[str, AgeGroup]) -> AgeGroup | None:
    """The group of an age in years; None where none is said, or one of which nothing is asked."""
    return next((g for g in groups.values() if age is not None and g.youngest <= age <= g.oldest), None)


@dataclass(frozen=True)
class Position:
    """How the body lies or works in an exercise, where a caution may ask about it."""

    id: str
    name: str
    exercises: tuple[str, ...] = ()
    slots: tuple[str, ...] = ()
    """Slots of which every exercise is in the position."""
    words: tuple[str, ...] = ()
    """Words in an exercise's name or setting that put it in the position."""
    excepted: tuple[str, ...] = ()
    """Exercises that have such a word and are not in the position."""
    holds: bool = False
    """Whether every exercise that is held or carried for a time is in it."""
    pins: bool = False
    """Whether every exercise that can trap the lifter under the load is in it."""
