"""A fee for each region in a day of a longer week."""

from __future__ import annotations

from setwright.solver.linear.linear_model import LinearModel


def post(model: LinearModel) -> None:
    resolved = model.resolved
    if len(resolved.days) < resolved.limit("theme", "least-days"):
        return
    for trained in model.regions.values():
        model.penalise("theme", trained, resolved.cost("theme"))
