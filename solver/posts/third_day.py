"""An exercise on a third day."""

from __future__ import annotations

from setwright.solver.linear.linear_model import LinearModel


def post(model: LinearModel) -> None:
    for held in model.third.values():
        if model.resolved.forced("third-day"):
            model.high[held] = 0
        else:
            model.objective[held] -= model.resolved.cost("third-day")
