"""A region or a movement without a main lift in the week."""

from __future__ import annotations

from setwright.solver.linear.linear_model import Expression, Sheet, combined
from setwright.solver.rules.region_main_lift import owed, serves


def post(sheet: Sheet) -> None:
    terms = sheet.terms
    for part in owed(terms):
        found: Expression = {}
        for cell in sheet.cells:
            day = terms.days[cell.days[0]]
            lifts = sheet.count(lambda e, p=part, d=day: serves(terms, p, e, d), cell.index)
            found = combined(found, lifts)
        missing = sheet.slack("region-main-lift", 1, terms.cost("region-main-lift"))
        sheet.row("region-main-lift", combined(found, {missing: 1}), low=1)
