"""More hinge days than knee days."""

from __future__ import annotations

from setwright.solver.linear.linear_model import Expression, LinearModel, combined
from setwright.solver.linear.region_days import trained_days
from setwright.solver.rules.hinge_over_knee import applies


def post(model: LinearModel) -> None:
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
