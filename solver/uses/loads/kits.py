"""What there is to load a lift with: what the brief says is owned, else what there usually is, in kg or in lb."""

from __future__ import annotations

from collections.abc import Mapping
from types import MappingProxyType
from typing import Final

from setwright.catalogue.entries import Exercise
from setwright.solver.brief.schema import Owned, Unit
from setwright.solver.evaluation.resolved_brief import ResolvedBrief
from setwright.solver.evaluation.resolved_day import ResolvedDay
from setwright.solver.evaluation.resolving import KG_IN_LB
from setwright.solver.uses.loads.buildable import Bar, Kit, OnePlate, Steps

BARS: Final[Mapping[str, float]] = MappingProxyType({"kg": 20.0, "lb": 45.0})
CURL_BARS: Final[Mapping[str, float]] = MappingProxyType({"kg": 10.0, "lb": 20.0})
PAIRS: Final[Mapping[str, tuple[float, ...]]] = MappingProxyType(
    {"kg": (20, 20, 20, 20, 10, 5, 5, 2.5, 1.25), "lb": (45, 45, 45, 45, 25, 10, 10, 5, 2.5)}
)
MORE_ON_A_SLED: Final = 5
"""Further pairs of the largest plates that a machine for plates carries."""
STEPS: Final[Mapping[str, Mapping[str, tuple[float, float]]]] = MappingProxyType(
    {
        "dumbbell": {"kg": (2, 2), "lb": (5, 5)},
        "stack": {"kg": (5, 5), "lb": (10, 10)},
        "kettlebell": {"kg": (4, 4), "lb": (10, 10)},
    }
)
"""Way of loading -> unit -> the least load and the step. All of these are common practice, no source."""
ONE_END: Final = frozenset({"dip-belt", "landmine", "t-bar", "t-bar-supported"})
"""Items whose plates all hang in one place."""


def usual_kit(exercise: Exercise, unit: str, bar: float | None, pairs: tuple[float, ...] | None) -> Kit | None:
    """The loads that can be built for an exercise, with a bar and pairs of plates of one's own where they are said.

    None for a lift that has no load to choose: body weight and bands.
    """
    if not exercise.has_load:
        return None
    if exercise.load in STEPS and bar is None and pairs is None:
        least, step = STEPS[exercise.load][unit]
        return Steps(least, step)
    if exercise.load == "plates" and bar is None:
        return _of_plates(exercise, unit, pairs)
    usual = CURL_BARS if "ez-bar" in exercise.needs else BARS
    weight = (usual[unit] if exercise.load == "barbell" else 0.0) if bar is None else bar
    return Bar(weight, PAIRS[unit] if pairs is None else pairs)


def kit_on(exercise: Exercise, resolved: ResolvedBrief, day: ResolvedDay) -> Kit | None:
    """The loads that can be built for an exercise on a day, in the client's unit; None where it has none."""
    owned, unit = resolved.brief.owned, resolved.brief.client.unit
    if exercise.load == "dumbbell":
        return _dumbbells(owned, unit, day)
    if exercise.load in STEPS:
        return usual_kit(exercise, unit, None, None)
    straight = exercise.load == "barbell" and "barbell" in exercise.needs
    return usual_kit(exercise, unit, owned.bar if straight else None, owned.plates or None)


def plates_are_said(exercise: Exercise, owned: Owned) -> bool:
    """Whether a brief says all that a load of a lift is built from: the plates, and the bar where it has one.

    The weight of a curl bar can be said nowhere.
    """
    return bool(owned.plates) and (exercise.load == "plates" or ("barbell" in exercise.needs and owned.bar is not None))


def _of_plates(exercise: Exercise, unit: str, pairs: tuple[float, ...] | None) -> Kit:
    """Plates without a bar's weight: one held, some that hang in one place, or a machine with pegs on both sides."""
    there = PAIRS[unit] if pairs is None else pairs
    if "plate" in exercise.needs:
        return OnePlate(tuple(sorted(set(there))))
    if ONE_END.intersection(exercise.needs):
        return Bar(0.0, there, ends=1)
    return Bar(0.0, there if pairs is not None else (*there[:1] * MORE_ON_A_SLED, *there))


def _dumbbells(owned: Owned, unit: Unit, day: ResolvedDay) -> Steps:
    """Dumbbells by the steps that are owned, else the usual ones, up to the heaviest of the day's place."""
    least, step = STEPS["dumbbell"][unit] if owned.dumbbell_step is None else (owned.dumbbell_step,) * 2
    if owned.dumbbell_max is not None:
        return Steps(least, step, owned.dumbbell_max)
    most = day.dumbbell_max
    return Steps(least, step, most if most is None or unit == "kg" else most / KG_IN_LB)
