"""An exercise needs equipment that the day does not have."""

from __future__ import annotations

from setwright.catalogue.entries import Exercise
from setwright.solver.evaluation.finding import Rule
from setwright.solver.evaluation.resolved_brief import ResolvedBrief, ResolvedDay


def excludes(resolved: ResolvedBrief, exercise: Exercise, day: ResolvedDay) -> bool:
    return not day.items.issuperset(exercise.needs)


RULE = Rule(
    id="equipment",
    kind="hard",
    sentence="Every exercise uses only what is at hand that day.",
    remedy="add the equipment to the day, or take a swap",
    excludes=excludes,
)
