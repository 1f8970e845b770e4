"""A session without a main lift."""

from __future__ import annotations

from setwright.solver.linear.linear_model import Sheet, combined
from setwright.solver.rules.main_lift import owed


def post(sheet: Sheet) -> None:
    due = {day.index for day in owed(sheet.terms)}
    for cell in sheet.cells:
        if cell.days[0] in due:
            day = sheet.terms.days[cell.days[0]]
            found = sheet.count(lambda e, d=day: sheet.terms.builds(e, d), cell.index)
            missing = sheet.slack("main-lift", len(cell.days), sheet.terms.cost("main-lift"))
            sheet.at_least_a_day("main-lift", combined(found, {missing: 1}), 1, cell.index)
