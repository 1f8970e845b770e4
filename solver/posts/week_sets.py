"""Working sets a week."""

from __future__ import annotations

from setwright.solver.linear.linear_model import Sheet, combined


def post(sheet: Sheet) -> None:
    terms = sheet.terms
    most = round(terms.limit("week-sets", terms.experience))
    over = sheet.slack("week-sets", 400, terms.cost("week-sets"))
    sheet.row("week-sets", combined(sheet.total(lambda e, o: o.sets), {over: -1}), high=most)
