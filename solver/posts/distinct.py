"""A different exercise to learn."""

from __future__ import annotations

from setwright.solver.linear.linear_model import LinearModel


def post(model: LinearModel) -> None:
    if not model.resolved.off("distinct"):
        cost = model.resolved.cost("distinct")
        for held in model.distinct.values():
            if model.resolved.forced("distinct"):
                model.high[held] = 0
            model.objective[held] -= cost
