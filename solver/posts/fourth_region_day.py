"""A region on a fourth day."""

from __future__ import annotations

from setwright.solver.linear.linear_model import Sheet, combined
from setwright.solver.rules.full_session import REGIONS


def post(sheet: Sheet) -> None:
    terms = sheet.terms
    if len(terms.days) < terms.limit("theme", "least-days"):
        return
    most = round(terms.limit("fourth-region-day", "days"))
    for region in REGIONS:
        over = sheet.slack("fourth-region-day", len(terms.days), terms.cost("fourth-region-day"))
        sheet.row("fourth-region-day", combined(sheet.region_week(region), {over: -1}), high=most)
