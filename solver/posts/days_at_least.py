"""Days of direct work that the brief asks for."""

from __future__ import annotations

from setwright.solver.linear.linear_model import LinearModel


def post(model: LinearModel) -> None:
    for muscle in model.resolved.muscles.values():
        if muscle.days_at_least:
            days = {
                model.days_with(
                    "days-at-least", model.count(lambda e, m=muscle: m.id in e.direct, group.index), group.index
                ): 1
                for group in model.groups
            }
            model.demand("days-at-least", f"{muscle.id} on {muscle.days_at_least} days", days, muscle.days_at_least)
