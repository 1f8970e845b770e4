"""Movements that the brief says must be there."""

from __future__ import annotations

from setwright.solver.linear.linear_model import LinearModel


def post(model: LinearModel) -> None:
    for movement in model.resolved.brief.must:
        found = model.count(lambda e, m=movement: e.movement == m)
        model.demand("must", f"must {movement}", found, 1)
