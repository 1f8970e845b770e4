"""Working sets a week."""

from __future__ import annotations

from setwright.solver.linear.linear_model import LinearModel, combined


def post(model: LinearModel) -> None:
    resolved = model.resolved
    most = round(resolved.limit("week-sets", resolved.experience))
    over = model.violation("week-sets", 400, resolved.cost("week-sets"))
    model.constrain("week-sets", combined(model.total(lambda e, o: o.sets), {over: -1}), high=most)
