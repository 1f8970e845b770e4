"""More hinge days than knee days."""

from __future__ import annotations

from setwright.solver.linear.linear_model import Expression, Sheet, combined
from setwright.solver.linear.region_days import trained_days
from setwright.solver.rules.hinge_over_knee import applies


def post(sheet: Sheet) -> None:
    terms = sheet.terms
    if not applies(terms):
        return
    knees: Expression = {}
    for cell in sheet.cells:
        found = sheet.count(lambda e: e.movement == "knee", cell.index)
        if found:
            knees[sheet.days_with("hinge-over-knee", found, cell.index)] = -1
    over = sheet.slack("hinge-over-knee", len(terms.days), terms.cost("hinge-over-knee"))
    hinges: Expression = {}
    for cell in sheet.cells:
        found = sheet.count(lambda e: e.movement == "hinge", cell.index)
        if found:
            hinges |= trained_days(sheet, found, cell.index)
    sheet.row("hinge-over-knee", combined(hinges, knees, {over: -1}), high=0)
