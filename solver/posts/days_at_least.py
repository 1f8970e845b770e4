"""Days of direct work that the brief asks for."""

from __future__ import annotations

from setwright.solver.linear.linear_model import Sheet


def post(sheet: Sheet) -> None:
    for muscle in sheet.terms.muscles.values():
        if muscle.days_at_least:
            days = {
                sheet.days_with(
                    "days-at-least", sheet.count(lambda e, m=muscle: m.id in e.direct, cell.index), cell.index
                ): 1
                for cell in sheet.cells
            }
            sheet.demand("days-at-least", f"{muscle.id} on {muscle.days_at_least} days", days, muscle.days_at_least)
