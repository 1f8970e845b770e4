"""An exercise that rests after each side, in efficiency."""

from __future__ import annotations

from setwright.catalogue.entries import Exercise
from setwright.solver.evaluation.finding import Rule
from setwright.solver.evaluation.resolved_brief import ResolvedBrief, ResolvedDay


def excludes(resolved: ResolvedBrief, exercise: Exercise, day: ResolvedDay) -> bool:
    return (
        resolved.goal == "efficiency"
        and exercise.limb == "each, rest after each"
        and exercise.id not in resolved.pinned
    )


RULE = Rule(
    id="each-side-rest",
    kind="hard",
    sentence="Efficiency has no exercise that rests after each side.",
    remedy="take its both-limb twin, or another goal",
    excludes=excludes,
)
