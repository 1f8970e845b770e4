"""A multi-joint lift taken to failure."""

from __future__ import annotations

from collections.abc import Iterator

from setwright.solver.evaluation.evaluated_week import EvaluatedWeek
from setwright.solver.evaluation.finding import Finding
from setwright.solver.linear.rule import Rule, held_by_columns


def check(evaluated: EvaluatedWeek) -> Iterator[Finding]:
    """A finding for each multi-joint line with no repetition in reserve (common practice, no source)."""
    for line in evaluated.lines:
        if line.exercise.multi_joint and line.entry.rir < evaluated.resolved.limit("to-failure"):
            yield Finding(
                "to-failure",
                amount=line.entry.rir,
                limit=evaluated.resolved.limit("to-failure"),
                days=(line.day.index,),
                exercise=line.exercise.id,
            )


def safe_to_fail(evaluated: EvaluatedWeek, finding: Finding) -> bool:
    """Whether nothing can pin the lifter or weighs on the spine when the last repetition fails."""
    exercise = evaluated.resolved.catalogue.exercises[finding.exercise]
    return exercise.safe_to_fail or not (exercise.can_pin or exercise.axial)


RULE = Rule(
    id="to-failure",
    kind="hard",
    sentence="A multi-joint lift keeps at least {limit:g} repetition in reserve.",
    remedy="stop the set a repetition earlier",
    post=held_by_columns,
    check=check,
    negligible=safe_to_fail,
    says="{day}: {exercise} has {amount} RIR, at least {limit}",
)
