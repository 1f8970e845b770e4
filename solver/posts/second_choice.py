"""A second choice where the kit has a first."""

from __future__ import annotations

from setwright.solver.linear.linear_model import LinearModel
from setwright.solver.rules.second_choice import applies


def post(model: LinearModel) -> None:
    resolved = model.resolved
    for group in model.groups:
        day = model.instance.resolved.days[group.days[0]]
        found = model.total(lambda e, o, d=day: 1 if applies(resolved, e, o.sets, d) else 0, group.index)
        model.penalise("second-choice", found, resolved.cost("second-choice"))
