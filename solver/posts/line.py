"""A line on the card."""

from __future__ import annotations

from setwright.solver.linear.linear_model import LinearModel


def post(model: LinearModel) -> None:
    model.penalise("line", model.count(lambda e: True), model.resolved.cost("line"))
