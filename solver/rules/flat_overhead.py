"""More sets of overhead presses than of flat and incline ones."""

from __future__ import annotations

from collections.abc import Iterator

from setwright.solver.evaluation.evaluated_week import EvaluatedWeek
from setwright.solver.evaluation.finding import Finding
from setwright.solver.evaluation.resolved_brief import ResolvedBrief
from setwright.solver.linear.linear_model import LinearModel, combined
from setwright.solver.linear.rule import Rule

SIGN = {"vertical-press": 1, "horizontal-press": -1}
MOST_OVER = 200
"""Overhead press sets above the others that a week can never have."""


def applies(resolved: ResolvedBrief) -> bool:
    """Whether the chest is wanted, a flat or incline press is possible, and front delts do not come first."""
    possible = resolved.can_somewhere(lambda e: e.movement == "horizontal-press")
    return resolved.sought("chest") and possible and "front-delts" not in resolved.priorities


def check(evaluated: EvaluatedWeek) -> Iterator[Finding]:
    """A finding where the week has more sets of vertical than of horizontal presses."""
    over, under = (
        sum(line.sets for line in evaluated.lines if line.exercise.movement == movement) for movement in SIGN
    )
    if over > under and applies(evaluated.resolved):
        cost = evaluated.resolved.penalty("flat-overhead", over - under)
        yield Finding("flat-overhead", cost, amount=over, limit=under)


def post(model: LinearModel) -> None:
    """Charge each set of vertical presses above those of horizontal ones."""
    resolved = model.resolved
    if not applies(resolved):
        return
    found = model.total(lambda e, p: p.sets * SIGN.get(e.movement, 0))
    over = model.violation("flat-overhead", MOST_OVER, resolved.cost("flat-overhead"))
    model.constrain("flat-overhead", combined(found, {over: -1}), high=0)


RULE = Rule(
    id="flat-overhead",
    kind="scored",
    sentence="A week should have at least as many sets of flat, incline and dip presses as of overhead presses, unless front delts are a priority.",
    remedy="swap an overhead press set for a flat or incline press set, or for a side raise",
    post=post,
    check=check,
    says="{amount} sets of overhead presses, {limit} of other presses",
)
