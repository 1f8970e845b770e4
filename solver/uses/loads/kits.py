"""What there usually is to load a lift with, where nobody says: by the way the lift is loaded, in kg and lb."""

from __future__ import annotations

from collections.abc import Mapping
from types import MappingProxyType
from typing import Final

from setwright.catalogue.entries import Exercise
from setwright.solver.uses.loads.buildable import Bar, Steps

BARS: Final[Mapping[str, float]] = MappingProxyType({"kg": 20.0, "lb": 45.0})
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


def usual_kit(exercise: Exercise, unit: str, bar: float | None, pairs: tuple[float, ...] | None) -> Bar | Steps | None:
    """The loads that can be built for an exercise, with a bar and pairs of plates of one's own where they are said.

    None for a lift that has no load to choose: body weight and bands.
    """
    if exercise.load in ("bodyweight", "band"):
        return None
    if exercise.load in STEPS and bar is None and pairs is None:
        least, step = STEPS[exercise.load][unit]
        return Steps(least, step)
    weight = (BARS[unit] if exercise.load == "barbell" else 0.0) if bar is None else bar
    on_a_sled = PAIRS[unit][:1] * MORE_ON_A_SLED if exercise.load == "plates" else ()
    return Bar(weight, (*on_a_sled, *PAIRS[unit]) if pairs is None else pairs)
