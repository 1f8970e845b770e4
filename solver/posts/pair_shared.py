"""An indirect muscle that both members of a pair tire."""

from __future__ import annotations

from setwright.solver.linear.linear_model import Sheet
from setwright.solver.evaluation.pairs import shared_indirect


def post(sheet: Sheet) -> None:
    cost = sheet.terms.cost("pair-shared")
    for j, column in enumerate(sheet.columns):
        if len(column.atoms) == 2:
            shared = shared_indirect(*(sheet.exercise(a.cls) for a in column.atoms))
            sheet.charge("pair-shared", {j: len(shared)} if shared else {}, cost)
