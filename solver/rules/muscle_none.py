"""An exercise for a muscle that is not to be trained."""

from __future__ import annotations

from setwright.catalogue.entries import Exercise
from setwright.solver.evaluation.finding import Rule
from setwright.solver.evaluation.resolved_brief import ResolvedBrief, ResolvedDay


def excludes(resolved: ResolvedBrief, exercise: Exercise, day: ResolvedDay) -> bool:
    sole = resolved.own_muscle(exercise)
    return sole is not None and resolved.muscles[sole].emphasis == "none" and exercise.id not in resolved.pinned


RULE = Rule(
    id="muscle-none",
    kind="hard",
    sentence="An exercise whose only direct muscle is at none stands nowhere.",
    remedy="give the muscle another emphasis, or drop the exercise",
    excludes=excludes,
)
