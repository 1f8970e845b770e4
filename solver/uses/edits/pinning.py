"""A brief with an exercise pinned, or with a line's pins moved to another exercise."""

from __future__ import annotations

from typing import Any

from setwright.catalogue.entries import Exercise
from setwright.solver.brief.schema import Pin
from setwright.solver.evaluation.evaluated_week import EvaluatedWeek, Line
from setwright.solver.evaluation.resolved_brief import ResolvedBrief
from setwright.solver.rulebook import resolve
from setwright.solver.rules.pinned import meets


def with_pin(resolved: ResolvedBrief, exercise: Exercise, weekday: Any = None) -> ResolvedBrief:
    """The brief with an exercise pinned, on a weekday if one is named; the same brief where it is pinned already."""
    if exercise.id in resolved.pinned:
        return resolved
    pin = Pin(exercise=exercise.id, day=weekday)
    return resolve(resolved.brief.model_copy(update={"pins": (*resolved.brief.pins, pin)}), resolved.catalogue)


def with_pins_moved(evaluated: EvaluatedWeek, line: Line, exercise: Exercise) -> ResolvedBrief:
    """The brief in which every pin that only this line meets asks for another exercise; the same brief if none does."""
    brief = evaluated.resolved.brief
    others = [x for x in evaluated.lines if (x.day.index, x.place) != (line.day.index, line.place)]
    pins = tuple(
        pin.model_copy(update={"exercise": exercise.id})
        if meets(pin, line) and not any(meets(pin, other) for other in others)
        else pin
        for pin in brief.pins
    )
    if pins == brief.pins:
        return evaluated.resolved
    return resolve(brief.model_copy(update={"pins": pins}), evaluated.resolved.catalogue)
