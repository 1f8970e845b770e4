"""An indirect muscle that both members of a pair tire."""

from __future__ import annotations

from setwright.solver.evaluation.pairs import shared_indirect
from setwright.solver.linear.linear_model import LinearModel


def post(model: LinearModel) -> None:
    cost = model.resolved.cost("pair-shared")
    for j, column in enumerate(model.columns):
        if len(column.assignments) == 2:
            shared = shared_indirect(*(model.exercise(a.cls) for a in column.assignments))
            model.penalise("pair-shared", {j: len(shared)} if shared else {}, cost)
