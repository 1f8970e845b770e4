"""A priority muscle on fewer than two days."""

from __future__ import annotations

from setwright.solver.linear.linear_model import Expression, LinearModel, combined
from setwright.solver.rules.priority_days import days_due


def post(model: LinearModel) -> None:
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
