"""The session clock, in whole seconds (a pair's halves in half seconds)."""

from __future__ import annotations

import math
from collections.abc import Mapping

from setwright.catalogue.entries import Limb


def work_seconds(reps: tuple[int, int], alternating: bool, seconds_per_rep: float) -> int:
    """The seconds one set takes: the middle of the range times the seconds a repetition takes, rounded up."""
    legs = 2 if alternating else 1
    return math.ceil(round((reps[0] + reps[1]) / 2 * legs * seconds_per_rep, 6))


def cycle_seconds(work: int, limb: Limb, rest: int) -> int:
    """One set with what follows it, both sides of a one-limb lift."""
    if limb == "both":
        return work + rest
    if limb == "each, then rest":
        return 2 * work + rest
    return 2 * (work + rest)


def rest_seen(work: int, limb: Limb, rest: int) -> int:
    """The rest that the working limb gets between its sets."""
    if limb == "both":
        return rest
    if limb == "each, then rest":
        return rest + work
    return 2 * rest + work


def technique_seconds(work: int, technique: str, drops: int, numbers: Mapping[str, float]) -> int:
    """The seconds of the last set when it is a drop set of so many drops, or a rest-pause set."""
    if technique == "drop":
        return work + drops * round(numbers["drop-seconds"] + numbers["strip-seconds"])
    if technique == "rest-pause":
        return round(numbers["rest-pause-seconds"])
    return work


def exercise_seconds(
    work: int,
    limb: Limb,
    sets: int,
    rest: int,
    change_over: int,
    technique: str = "straight",
    drops: int = 0,
    numbers: Mapping[str, float] | None = None,
) -> int:
    """All seconds of one unpaired exercise; its last rest doubles as the change-over."""
    last = technique_seconds(work, technique, drops, numbers or {})
    return (
        (sets - 1) * cycle_seconds(work, limb, rest)
        + cycle_seconds(work, limb, rest)
        + (last - work)
        + max(0, change_over - rest)
    )


def pair_work(work: int, limb: Limb) -> int:
    """The seconds one member's set takes in a pair: both sides where one limb works at a time."""
    return work if limb == "both" else 2 * work


def half_pair_half_seconds(work: int, rounds: int, rest: int, change_over: int, pair_change: int = 15) -> int:
    """One member's part of a pair, in half seconds; the two parts add up to `pair_seconds`."""
    return rounds * (2 * work + pair_change + rest) + 2 * max(0, change_over - rest)


def pair_seconds(
    work_a: int, work_b: int, rounds: int, rest: int, change_a: int, change_b: int, pair_change: int = 15
) -> int:
    """All seconds of a pair of so many rounds; a rest follows each round."""
    return rounds * (work_a + pair_change + work_b + rest) + max(0, change_a - rest) + max(0, change_b - rest)


def warm_up_seconds(minutes: int, goal: str, numbers: Mapping[str, float]) -> int:
    """The general warm-up of a day under a goal: short up to 30 minutes, then half of each further second."""
    extra = max(0, 60 * minutes - 60 * round(numbers["warm-up-short-day-minutes"])) // 2
    return min(round(numbers[f"warm-up-short-{goal}"]) + extra, round(numbers[f"warm-up-long-{goal}"]))
