"""Load on the spine in a day."""

from __future__ import annotations

from setwright.solver.linear.linear_model import LinearModel


def post(model: LinearModel) -> None:
    most = int(model.resolved.limit("axial-load"))
    for group in model.groups:
        found = model.total(lambda e, o: o.sets * e.axial, group.index)
        model.at_most_a_day("axial-load", found, most, group.index)
