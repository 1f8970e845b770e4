"""An exercise outside the day's focus."""

from __future__ import annotations

from setwright.catalogue.entries import Exercise
from setwright.solver.evaluation.finding import Rule
from setwright.solver.evaluation.resolved_brief import ResolvedBrief, ResolvedDay


def excludes(resolved: ResolvedBrief, exercise: Exercise, day: ResolvedDay) -> bool:
    if day.focus is None or exercise.id in resolved.pinned:
        return False
    return day.focus not in exercise.slot.focus


RULE = Rule(
    id="day-focus",
    kind="hard",
    sentence="A day with a focus holds only that focus's exercises.",
    remedy="move it to another day, or drop the focus",
    excludes=excludes,
)
