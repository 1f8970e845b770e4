"""Movements that the brief says must be there."""

from __future__ import annotations

from collections.abc import Iterator

from setwright.solver.evaluation.evaluated_week import EvaluatedWeek
from setwright.solver.evaluation.finding import Finding, Rule


def check(evaluated: EvaluatedWeek) -> Iterator[Finding]:
    for movement in evaluated.resolved.brief.must:
        if not any(line.exercise.movement == movement for line in evaluated.lines):
            yield Finding("must", f"{movement} is missing")


RULE = Rule(
    id="must",
    kind="hard",
    sentence="Every movement the brief says must be there is in the week.",
    remedy="drop it from `must`, or add the kit for it",
    check=check,
)
