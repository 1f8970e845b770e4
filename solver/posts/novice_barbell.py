"""Barbell lifts of a region in a novice's day."""

from __future__ import annotations

from setwright.solver.linear.columns import REGIONS
from setwright.solver.linear.linear_model import Sheet


def post(sheet: Sheet) -> None:
    if sheet.terms.experience != "novice":
        return
    most = round(sheet.terms.limit("novice-barbell"))
    for cell in sheet.cells:
        for region in REGIONS:
            found = sheet.count(lambda e, r=region: e.barbell and e.region == r, cell.index)
            sheet.at_most_a_day("novice-barbell", found, most, cell.index)
