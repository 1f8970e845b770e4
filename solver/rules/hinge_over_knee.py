"""More hinge days than knee days."""

from __future__ import annotations

from collections.abc import Iterator

from setwright.solver.evaluation.evaluated_week import EvaluatedWeek
from setwright.solver.evaluation.finding import Finding
from setwright.solver.evaluation.resolved_brief import ResolvedBrief
from setwright.solver.linear.linear_model import Expression, LinearModel, combined
from setwright.solver.linear.region_days import trained_days
from setwright.solver.linear.rule import Rule


def applies(resolved: ResolvedBrief) -> bool:
    """Whether knee lifts are wanted and possible."""
    return resolved.sought("quads") and resolved.can_somewhere(lambda e: e.movement == "knee")


def check(evaluated: EvaluatedWeek) -> Iterator[Finding]:
    """A finding where the week has more hinge days than knee days."""
    hinges = len(evaluated.days_with(lambda x: x.exercise.movement == "hinge"))
    knees = len(evaluated.days_with(lambda x: x.exercise.movement == "knee"))
    if hinges > knees and applies(evaluated.resolved):
        cost = evaluated.resolved.penalty("hinge-over-knee", hinges - knees)
        yield Finding("hinge-over-knee", cost, amount=hinges, limit=knees)


def post(model: LinearModel) -> None:
    """Charge each hinge day above the knee days."""
    resolved = model.resolved
    if not applies(resolved):
        return
    knees: Expression = {}
    for group in model.groups:
        found = model.count(lambda e: e.movement == "knee", group.index)
        if found:
            knees[model.days_with("hinge-over-knee", found, group.index)] = -1
    over = model.violation("hinge-over-knee", len(resolved.days), resolved.cost("hinge-over-knee"))
    hinges: Expression = {}
    for group in model.groups:
        found = model.count(lambda e: e.movement == "hinge", group.index)
        if found:
            hinges |= trained_days(model, found, group.index)
    model.constrain("hinge-over-knee", combined(hinges, knees, {over: -1}), high=0)


RULE = Rule(
    id="hinge-over-knee",
    kind="scored",
    sentence="Hinges should be trained on no more days than knee lifts.",
    remedy="swap a hinge for a squat or a leg press",
    post=post,
    check=check,
    says="{amount} hinge days and {limit} knee days",
)
