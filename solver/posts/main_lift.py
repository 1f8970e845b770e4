"""A session without a main lift."""

from __future__ import annotations

from setwright.solver.linear.linear_model import LinearModel, combined
from setwright.solver.rules.main_lift import owed


def post(model: LinearModel) -> None:
    due = {day.index for day in owed(model.resolved)}
    for group in model.groups:
        if group.days[0] in due:
            day = model.resolved.days[group.days[0]]
            found = model.count(lambda e, d=day: model.resolved.builds(e, d), group.index)
            missing = model.violation("main-lift", len(group.days), model.resolved.cost("main-lift"))
            model.at_least_a_day("main-lift", combined(found, {missing: 1}), 1, group.index)
