"""A different exercise to learn."""

from __future__ import annotations

from setwright.solver.linear.linear_model import Sheet


def post(sheet: Sheet) -> None:
    if not sheet.terms.off("distinct"):
        cost = sheet.terms.cost("distinct")
        for held in sheet.distinct.values():
            if sheet.terms.forced("distinct"):
                sheet.high[held] = 0
            sheet.worth[held] -= cost
