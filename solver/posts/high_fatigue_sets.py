"""High-fatigue sets a day."""

from __future__ import annotations

from setwright.solver.linear.linear_model import Sheet
from setwright.solver.rules.high_fatigue_sets import most_high_fatigue


def post(sheet: Sheet) -> None:
    most = most_high_fatigue(sheet.terms)
    for cell in sheet.cells:
        found = sheet.total(lambda e, o: o.sets if e.main_lift else 0, cell.index)
        sheet.at_most_a_day("high-fatigue-sets", found, most, cell.index)
