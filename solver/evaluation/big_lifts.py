"""The kinds of big lifts that a session is built of."""

from __future__ import annotations

from collections.abc import Mapping
from types import MappingProxyType
from typing import Final

from setwright.catalogue.entries import Exercise
from setwright.solver.evaluation.evaluated_week import EvaluatedWeek

KINDS: Final[Mapping[str, str]] = MappingProxyType(
    {
        "knee": "squat",
        "hinge": "hinge",
        "horizontal-press": "press",
        "vertical-press": "press",
        "row": "pull",
        "vertical-pull": "pull",
    }
)
"""Movement -> the kind of big lift that a day should not lose."""


def kind_of(exercise: Exercise) -> str | None:
    """The kind of big lift that an exercise is; None for any other."""
    return KINDS.get(exercise.movement) if exercise.multi_joint else None


def kinds_on(evaluated: EvaluatedWeek, day: int) -> frozenset[str]:
    """The kinds of big lifts on a day."""
    return frozenset(kind for line in evaluated.on[day] if (kind := kind_of(line.exercise)))
