"""A priority muscle on fewer days than it should be."""

from __future__ import annotations

from collections.abc import Iterator

from setwright.solver.evaluation.evaluated_week import EvaluatedWeek
from setwright.solver.evaluation.finding import Finding
from setwright.solver.evaluation.resolved_brief import ResolvedBrief
from setwright.solver.linear.linear_model import Expression, LinearModel, combined
from setwright.solver.linear.rule import Rule


def days_due(resolved: ResolvedBrief, muscle: str) -> int:
    """The days of direct work a priority muscle should have, as far as days and kit allow."""
    possible = sum(1 for d in resolved.days if resolved.can(d, lambda e: muscle in e.direct))
    return min(round(resolved.limit("priority-days", "days")), possible)


def check(evaluated: EvaluatedWeek) -> Iterator[Finding]:
    """A finding for each priority muscle with direct work on too few days."""
    for muscle in evaluated.resolved.priorities:
        due, days = days_due(evaluated.resolved, muscle), evaluated.direct_days(muscle)
        if days < due:
            cost = evaluated.resolved.penalty("priority-days", due - days)
            yield Finding("priority-days", cost, subject=muscle, amount=days, limit=due)


def post(model: LinearModel) -> None:
    """Charge each day that a priority muscle is short."""
    resolved = model.resolved
    for muscle in resolved.priorities:
        due = days_due(resolved, muscle)
        days: Expression = {}
        for group in model.groups:
            found = model.count(lambda e, m=muscle: m in e.direct, group.index)
            if found:
                days[model.days_with("priority-days", found, group.index)] = 1
        short = model.violation("priority-days", due, resolved.cost("priority-days"))
        model.constrain("priority-days", combined(days, {short: 1}), low=due)


RULE = Rule(
    id="priority-days",
    kind="scored",
    sentence="A priority muscle should have direct work on at least {days:g} days.",
    remedy="give it direct work on another day",
    post=post,
    check=check,
    says="{subject} has direct work on {amount} of {limit} days",
)
