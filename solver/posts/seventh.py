"""A seventh exercise on a short day."""

from __future__ import annotations

from setwright.solver.linear.linear_model import LinearModel, combined


def post(model: LinearModel) -> None:
    resolved = model.resolved
    most = round(resolved.limit("seventh", "exercises"))
    for group in model.groups:
        if model.day(group.index).minutes <= resolved.limit("seventh", "minutes"):
            over = model.violation("seventh", 4 * len(group.days), resolved.cost("seventh"))
            found = combined(model.count(lambda e: True, group.index), {over: -1})
            model.at_most_a_day("seventh", found, most, group.index)
