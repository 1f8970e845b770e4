"""A fee for each region in a day of a longer week."""

from __future__ import annotations

from setwright.solver.linear.linear_model import Sheet


def post(sheet: Sheet) -> None:
    terms = sheet.terms
    if len(terms.days) < terms.limit("theme", "least-days"):
        return
    for trained in sheet.regions.values():
        sheet.charge("theme", trained, terms.cost("theme"))
