"""A muscle's sets in a day above what pays."""

from __future__ import annotations

from setwright.solver.linear.weekly_sets import grain_of, sets_of
from setwright.solver.linear.linear_model import Sheet, combined
from setwright.solver.evaluation.evaluated_week import WHOLE


def post(sheet: Sheet) -> None:
    terms = sheet.terms
    most = round(terms.limit("muscle-day-cram", "sets") * WHOLE)
    for cell in sheet.cells:
        for muscle in terms.muscles:
            found = sets_of(sheet, muscle, cell.index)
            if sum(v * sheet.high[j] for j, v in found.items()) > most:
                grain = grain_of(found, most)
                cost = terms.cost("muscle-day-cram") * grain / WHOLE
                over = sheet.slack("muscle-day-cram", 20 * WHOLE // grain * len(cell.days), cost)
                sheet.at_most_a_day("muscle-day-cram", combined(found, {over: -grain}), most, cell.index)
