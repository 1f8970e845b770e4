"""A seventh exercise on a short day."""

from __future__ import annotations

from setwright.solver.linear.linear_model import Sheet, combined


def post(sheet: Sheet) -> None:
    terms = sheet.terms
    most = round(terms.limit("seventh", "exercises"))
    for cell in sheet.cells:
        if sheet.day(cell.index).minutes <= terms.limit("seventh", "minutes"):
            over = sheet.slack("seventh", 4 * len(cell.days), terms.cost("seventh"))
            found = combined(sheet.count(lambda e: True, cell.index), {over: -1})
            sheet.at_most_a_day("seventh", found, most, cell.index)
