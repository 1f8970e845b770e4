"""Working sets a day."""

from __future__ import annotations

from setwright.solver.linear.linear_model import LinearModel, combined


def post(model: LinearModel) -> None:
    resolved = model.resolved
    most = round(resolved.limit("day-sets", resolved.experience))
    for group in model.groups:
        over = model.violation("day-sets", 60 * len(group.days), resolved.cost("day-sets"))
        found = combined(model.total(lambda e, o: o.sets, group.index), {over: -1})
        model.at_most_a_day("day-sets", found, most, group.index)
