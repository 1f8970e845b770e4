"""Movements that the brief says must be there."""

from __future__ import annotations

from collections.abc import Iterator

from setwright.solver.evaluation.evaluated_week import EvaluatedWeek
from setwright.solver.evaluation.finding import Finding, Wish
from setwright.solver.linear.linear_model import LinearModel
from setwright.solver.linear.rule import Rule


def check(evaluated: EvaluatedWeek) -> Iterator[Finding]:
    """A finding for each such movement that the week has not."""
    for movement in evaluated.resolved.brief.must:
        if not any(line.exercise.movement == movement for line in evaluated.lines):
            yield Finding("must", subject=movement)


def post(model: LinearModel) -> None:
    """Ask for one exercise of each such movement."""
    for movement in model.resolved.brief.must:
        found = model.count(lambda e, m=movement: e.movement == m)
        model.demand(Wish("must", movement), found, 1)


RULE = Rule(
    id="must",
    kind="hard",
    sentence="The week has every movement that the brief says it must have.",
    remedy="drop it from `must`, or add the kit for it",
    post=post,
    check=check,
    says="{subject} is missing",
)
