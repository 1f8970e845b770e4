"""A walk between the two places of a pair."""

from __future__ import annotations

from collections.abc import Iterator

from setwright.solver.evaluation.evaluated_week import EvaluatedWeek
from setwright.solver.evaluation.finding import Finding
from setwright.solver.evaluation.pairing.pairs import walk_between
from setwright.solver.linear.linear_model import LinearModel
from setwright.solver.linear.rule import Rule


def check(evaluated: EvaluatedWeek) -> Iterator[Finding]:
    """A finding for each pair that holds two stations, or carries weights to one."""
    resolved = evaluated.resolved
    for line in evaluated.lines:
        partner = line.entry.partner
        other = None if partner is None else resolved.catalogue.exercises.get(partner)
        if other is not None and line.exercise.id < other.id and walk_between(resolved, line.exercise, other):
            cost, days = resolved.penalty("pair-walk", 1), (line.day.index,)
            yield Finding("pair-walk", cost, days=days, exercise=line.exercise.id, others=(other.id,))


def post(model: LinearModel) -> None:
    """Charge each pair for the walk; halves of pairs do not know their partner and are charged nothing."""
    apart = {
        j: 1
        for j, column in enumerate(model.columns)
        if len(column.assignments) == 2
        and walk_between(model.resolved, *(model.exercise(a.cls) for a in column.assignments))
    }
    model.penalise("pair-walk", apart, model.resolved.cost("pair-walk"))


RULE = Rule(
    id="pair-walk",
    kind="scored",
    sentence="The two exercises of a pair should be done at one place, without holding two stations or carrying weights to one.",
    remedy="pair it with an exercise at the same place",
    post=post,
    check=check,
    says="{day}: {exercise} and {others} are done at two places",
)
