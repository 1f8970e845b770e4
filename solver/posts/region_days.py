"""A region on fewer than two days of a longer week."""

from __future__ import annotations

from setwright.solver.linear.linear_model import Sheet, combined
from setwright.solver.rules.full_session import REGIONS, wanted
from setwright.solver.rules.region_days import possible


def post(sheet: Sheet) -> None:
    terms = sheet.terms
    if len(terms.days) < terms.limit("region-days", "least-days"):
        return
    for region in REGIONS:
        if wanted(terms, region) and possible(terms, region) > 1:
            short = sheet.slack("region-days", 2, terms.cost("region-days"))
            sheet.row("region-days", combined(sheet.region_week(region), {short: 1}), low=2)
