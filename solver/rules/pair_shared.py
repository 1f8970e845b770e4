"""An indirect muscle that both members of a pair tire."""

from __future__ import annotations

from collections.abc import Iterator

from setwright.solver.evaluation.evaluated_week import EvaluatedWeek
from setwright.solver.evaluation.finding import Finding
from setwright.solver.evaluation.pairs import shared_indirect
from setwright.solver.linear.linear_model import LinearModel
from setwright.solver.linear.rule import Rule


def check(evaluated: EvaluatedWeek) -> Iterator[Finding]:
    """A finding for each pair whose members both train a muscle indirectly."""
    for line in evaluated.lines:
        partner = line.entry.partner
        if partner is not None and line.exercise.id < partner:
            shared = shared_indirect(line.exercise, evaluated.resolved.catalogue.exercises[partner])
            if shared:
                cost = evaluated.resolved.penalty("pair-shared", len(shared))
                days = (line.day.index,)
                yield Finding("pair-shared", cost, days=days, exercise=line.exercise.id, others=(partner, *shared))


def post(model: LinearModel) -> None:
    """Charge each pair for the muscles that both train indirectly."""
    cost = model.resolved.cost("pair-shared")
    for j, column in enumerate(model.columns):
        if len(column.assignments) == 2:
            shared = shared_indirect(*(model.exercise(a.cls) for a in column.assignments))
            model.penalise("pair-shared", {j: len(shared)} if shared else {}, cost)


RULE = Rule(
    id="pair-shared",
    kind="scored",
    sentence="The two exercises of a pair should share no indirectly trained muscle.",
    remedy="pair it with another exercise",
    post=post,
    check=check,
    says="{day}: {exercise} and its partner share {others}",
)
