"""A muscle's sets in a day, at most."""

from __future__ import annotations

from setwright.solver.linear.weekly_sets import sets_of
from setwright.solver.linear.linear_model import Sheet
from setwright.solver.evaluation.evaluated_week import WHOLE


def post(sheet: Sheet) -> None:
    most = round(sheet.terms.limit("muscle-day-cap") * WHOLE)
    for cell in sheet.cells:
        for muscle in sheet.terms.muscles:
            sheet.at_most_a_day("muscle-day-cap", sets_of(sheet, muscle, cell.index), most, cell.index)
