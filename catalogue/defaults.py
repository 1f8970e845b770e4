"""The catalogue's defaults as frozen values: weights, bands, rests, sets and ramp-up sets."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

GOALS = ("growth", "balanced", "efficiency")
EMPHASES = ("priority", "normal", "hold", "none")
EXPERIENCES = ("novice", "intermediate", "advanced")
LIFT_KINDS = ("main", "multi", "single")
"""Kinds of lift that differ in rest: main lifts, other lifts of several joints, lifts of one joint."""

Band = tuple[float, float]
"""The least and the most weekly fractional sets of a muscle."""
Bands = Mapping[str, Mapping[str, Band]]
"""Goal -> emphasis (priority, normal, hold) -> band."""
Rests = Mapping[str, tuple[int, ...]]
"""Key -> rests in seconds."""


@dataclass(frozen=True)
class CostScale:
    """What scales rules' costs to a brief: `reference` / its sum of weights, held between `least` and `most`."""

    reference: float
    least: float
    most: float


@dataclass(frozen=True)
class MinorBand:
    """The band at normal emphasis that the named muscles have in growth, unless the client is a novice."""

    muscles: tuple[str, ...]
    normal: Band


@dataclass(frozen=True)
class SetSpans:
    """Fewest and most sets of an exercise in a day, by what kind of exercise it is."""

    multi: tuple[int, int]
    multi_most: int
    """The most sets of a lift of several joints in growth, or where it trains a priority."""
    single: tuple[int, int]
    trunk: tuple[int, int]
    once_a_week: tuple[int, int]
    minimum_dose: tuple[int, int]


@dataclass(frozen=True)
class BlockDefaults:
    """How a block of weeks goes from week to week; all conventions."""

    lighter_every: int
    """Every so many weeks one is lighter."""
    lighter_sets: float
    """The share of each exercise's sets that a lighter week keeps."""
    lighter_load: float
    """The share of each load that a lighter week keeps."""
    lighter_rir: int
    """Repetitions in reserve that a lighter week adds."""
    minimum_sets: float
    """The share of each exercise's sets that a week at the minimum dose keeps."""
    rise_most: float
    """The most weekly sets of a muscle above the build week before."""
    first_above_now: float
    """The most weekly sets of a muscle that the first week has above those done at present."""
    first_share: float
    """The least share of a muscle's weekly sets that the first build week has of the last one's."""
    away_share: float
    """The share of its stimulus that a week away may give up to stay near the build week before it."""
    return_after: int
    """Weeks without training after which a week of return comes first."""
    return_twice_after: int
    """Weeks without training after which two weeks of return come first."""
    reps_step: float
    """The part of a range of repetitions that a build week adds."""
    rir_more: Mapping[str, tuple[int, ...]]
    """Experience -> repetitions in reserve on top of the week's own, for each of the first build weeks."""


@dataclass(frozen=True)
class SeasonDefaults:
    """What a season is laid out by: its weeks, the lengths of its blocks, and how its sets may change."""

    weeks: int
    block_weeks: tuple[int, int]
    """The fewest and the most weeks of a block, its lighter week included."""
    specialised_most: int
    """Muscles specialised at a time."""
    running_most: int
    """Blocks running in which a muscle may be specialised."""
    usual_kept: float
    """The share of its sets in the reference week that an exercise keeps."""


@dataclass(frozen=True)
class Defaults:
    """What is taken where a brief says nothing."""

    weights: Mapping[str, float]
    """Emphasis -> the weight of a muscle."""
    cost_scale: CostScale
    bands: Bands
    novice_bands: Bands
    minor_growth: MinorBand
    rests: Mapping[str, Rests]
    """Goal -> kind of lift -> rests between sets that are not paired."""
    pair_rests: Rests
    """Goal -> rests after a round of a pair."""
    single_pair_rests: Rests
    """Goal -> further rests of a pair whose two lifts are of one joint; a goal without any is absent."""
    heavy_pair_rests: Rests
    """Goal -> rests of a pair with a high-fatigue lift, whose partner of several joints may rest so too.

    A goal under which such lifts stand alone is absent.
    """
    sets: SetSpans
    drops: tuple[int, ...]
    """How many drops a drop set may have."""
    ramp: tuple[tuple[int, int], ...]
    """The ramp-up sets of a cold lift: hundredths of the working load, repetitions."""
    phrase_rests: tuple[int, int]
    """Seconds that a phrase's short rests are at most, and its long ones at least."""
    full_rest: int
    """Seconds of rest after which a further minute is worth next to nothing."""
    warm_up_shortest: int
    """Seconds below which a general warm-up is not worth its line on a card."""
    keep_share: float
    """The share of the best week's stimulus that is kept when minutes are cut."""
    block: BlockDefaults
    replan_share: float
    """The share of the best stimulus that is kept for fewer changes when the rest of a week is planned again."""
    season: SeasonDefaults
