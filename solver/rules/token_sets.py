"""A multi-joint lift of two sets."""

from __future__ import annotations

from collections.abc import Iterator

from setwright.catalogue.entries import Exercise
from setwright.solver.evaluation.evaluated_week import EvaluatedWeek
from setwright.solver.evaluation.finding import Finding, Rule, some_sets
from setwright.solver.evaluation.resolved_brief import ResolvedBrief, ResolvedDay


def applies(resolved: ResolvedBrief, exercise: Exercise, sets: int, day: ResolvedDay) -> bool:
    """Whether a line of so many sets pays this cost."""
    return (
        exercise.multi_joint
        and sets < resolved.limit("token-sets", "sets")
        and resolved.goal != "efficiency"
        and len(resolved.days) > 1
        and not resolved.minimum_dose
    )


def check(evaluated: EvaluatedWeek) -> Iterator[Finding]:
    for line in evaluated.lines:
        if applies(evaluated.resolved, line.exercise, line.sets, line.day):
            yield Finding(
                "token-sets", f"{line.where} has {some_sets(line.sets)}", evaluated.resolved.penalty("token-sets", 1)
            )


RULE = Rule(
    id="token-sets",
    kind="scored",
    sentence="A multi-joint lift of fewer than 3 sets costs, outside efficiency, one-day weeks and a minimum dose.",
    remedy="give the lift a third set",
    check=check,
)
