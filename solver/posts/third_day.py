"""An exercise on a third day."""

from __future__ import annotations

from setwright.solver.linear.linear_model import Sheet


def post(sheet: Sheet) -> None:
    for held in sheet.third.values():
        if sheet.terms.forced("third-day"):
            sheet.high[held] = 0
        else:
            sheet.worth[held] -= sheet.terms.cost("third-day")
