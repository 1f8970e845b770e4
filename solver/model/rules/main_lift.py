"""A session without a main lift."""

from __future__ import annotations

from setwright.solver.model.sheet import Sheet, combined
from setwright.solver.reckoning.rules.main_lift import owed


def post(sheet: Sheet) -> None:
    due = {day.index for day in owed(sheet.terms)}
    for cell in sheet.cells:
        if cell.days[0] in due:
            found = sheet.count(lambda e: e.main_lift, cell.index)
            missing = sheet.slack("main-lift", len(cell.days), sheet.terms.cost("main-lift"))
            sheet.at_least_a_day("main-lift", combined(found, {missing: 1}), 1, cell.index)
