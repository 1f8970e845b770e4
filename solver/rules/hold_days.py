"""A muscle that is only held on fewer days than an older client needs to hold it."""

from __future__ import annotations

from collections.abc import Iterator

from setwright.solver.evaluation.evaluated_week import EvaluatedWeek
from setwright.solver.evaluation.finding import Finding
from setwright.solver.evaluation.resolved_brief import ResolvedBrief
from setwright.solver.linear.linear_model import Expression, LinearModel, combined
from setwright.solver.linear.rule import Rule


def days_due(resolved: ResolvedBrief, muscle: str) -> int:
    """The days of direct work that a muscle should have to be held, as far as days and kit allow; 0 where none is due."""
    wanted = resolved.age_group.hold_days if resolved.age_group else 1
    target = resolved.muscles[muscle]
    if wanted <= 1 or target.emphasis != "hold" or not target.weight:
        return 0
    return min(wanted, sum(1 for d in resolved.days if resolved.can(d, lambda e: muscle in e.direct)))


def check(evaluated: EvaluatedWeek) -> Iterator[Finding]:
    """A finding for each muscle at hold with direct work on too few days."""
    for muscle in evaluated.resolved.muscles:
        due, days = days_due(evaluated.resolved, muscle), evaluated.direct_days(muscle)
        if days < due:
            cost = evaluated.resolved.penalty("hold-days", due - days)
            yield Finding("hold-days", cost, subject=muscle, amount=days, limit=due)


def post(model: LinearModel) -> None:
    """Charge each day that a muscle at hold is short."""
    resolved = model.resolved
    for muscle in resolved.muscles:
        due = days_due(resolved, muscle)
        if not due:
            continue
        days: Expression = {}
        for group in model.groups:
            found = model.count(lambda e, m=muscle: m in e.direct, group.index)
            if found:
                days[model.days_with("hold-days", found, group.index)] = 1
        short = model.violation("hold-days", due, resolved.cost("hold-days"))
        model.constrain("hold-days", combined(days, {short: 1}), low=due)


RULE = Rule(
    id="hold-days",
    kind="scored",
    sentence="A muscle at hold should have direct work on as many days as holding it takes: one, or two from about the age of 60.",
    remedy="give it direct work on another day",
    post=post,
    check=check,
    says="{subject} has direct work on {amount} of {limit} days",
)
