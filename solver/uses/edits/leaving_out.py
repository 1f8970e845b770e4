"""A brief and a week without one exercise."""

from __future__ import annotations

from setwright.solver.auditing import Audit, audit
from setwright.solver.brief.schema import Brief
from setwright.solver.evaluation.week import Week
from setwright.solver.uses.edits.editing import without


def left_out(brief: Brief, exercise: str) -> Brief:
    """The brief that avoids an exercise; pins and likings of it are dropped."""
    pins = tuple(pin for pin in brief.pins if exercise not in (pin.exercise, pin.pair_with))
    like = tuple(word for word in brief.like if word != exercise)
    avoid = tuple(dict.fromkeys((*brief.avoid, exercise)))
    return brief.model_copy(update={"avoid": avoid, "pins": pins, "like": like})


def emptied(found: Audit, exercise: str) -> Week:
    """The week without an exercise on any day, the rest as it is."""
    now = found
    while any(line.exercise.id == exercise for line in now.evaluated.lines):
        line = next(line for line in now.evaluated.lines if line.exercise.id == exercise)
        now = audit(now.evaluated.resolved, without(now.evaluated, line))
    return now.evaluated.week
