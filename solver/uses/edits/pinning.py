"""Terms with an exercise pinned, or with a line's pins gone over to another exercise."""

from __future__ import annotations

from typing import Any

from setwright.catalogue.entries import Exercise
from setwright.solver.brief.schema import Pin
from setwright.solver.evaluation.resolving import resolve
from setwright.solver.rules.pinned import meets
from setwright.solver.evaluation.resolved_brief import Terms
from setwright.solver.evaluation.evaluated_week import Line, View


def with_pin(terms: Terms, exercise: Exercise, weekday: Any = None) -> Terms:
    """The terms with an exercise pinned, on a weekday if one is named, unless it is pinned already."""
    if exercise.id in terms.pinned:
        return terms
    pin = Pin(exercise=exercise.id, day=weekday)
    return resolve(terms.brief.model_copy(update={"pins": (*terms.brief.pins, pin)}), terms.catalogue)


def with_pins_moved(view: View, line: Line, exercise: Exercise) -> Terms:
    """The terms in which every pin that only this line meets asks for another exercise; the same terms if none does."""
    brief = view.terms.brief
    others = [x for x in view.lines if (x.day.index, x.place) != (line.day.index, line.place)]
    pins = tuple(
        pin.model_copy(update={"exercise": exercise.id})
        if meets(pin, line) and not any(meets(pin, other) for other in others)
        else pin
        for pin in brief.pins
    )
    if pins == brief.pins:
        return view.terms
    return resolve(brief.model_copy(update={"pins": pins}), view.terms.catalogue)
