"""Terms with one more exercise pinned."""

from __future__ import annotations

from typing import Any

from setwright.catalogue.entries import Exercise
from setwright.solver.brief.schema import Pin
from setwright.solver.reckoning.resolve import resolve
from setwright.solver.reckoning.terms import Terms


def with_pin(terms: Terms, exercise: Exercise, weekday: Any = None) -> Terms:
    """The terms with an exercise pinned, on a weekday if one is named, unless it is pinned already."""
    if exercise.id in terms.pinned:
        return terms
    pin = Pin(exercise=exercise.id, day=weekday)
    return resolve(terms.brief.model_copy(update={"pins": (*terms.brief.pins, pin)}), terms.catalogue)
