"""Working sets a day."""

from __future__ import annotations

from setwright.solver.linear.linear_model import Sheet, combined


def post(sheet: Sheet) -> None:
    terms = sheet.terms
    most = round(terms.limit("day-sets", terms.experience))
    for cell in sheet.cells:
        over = sheet.slack("day-sets", 60 * len(cell.days), terms.cost("day-sets"))
        found = combined(sheet.total(lambda e, o: o.sets, cell.index), {over: -1})
        sheet.at_most_a_day("day-sets", found, most, cell.index)
