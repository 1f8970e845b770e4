"""A region on two consecutive days."""

from __future__ import annotations

from setwright.solver.linear.linear_model import Sheet, combined
from setwright.solver.rules.full_session import REGIONS
from setwright.solver.evaluation.resolved_brief import Terms


def most_apart(terms: Terms) -> int:
    """The most days of the week of which no two are consecutive."""
    count = len(terms.days)
    return max(
        mask.bit_count()
        for mask in range(2**count)
        if not any(mask >> i & 1 and mask >> j & 1 for i, j in terms.adjacent)
    )


def post(sheet: Sheet) -> None:
    terms = sheet.terms
    if len(terms.days) < terms.limit("theme", "least-days"):
        return
    cost = terms.cost("region-consecutive")
    for region in REGIONS:
        if not (sheet.daily or sheet.themed):
            over = sheet.slack("region-consecutive", len(terms.days), cost)
            sheet.row("region-consecutive", combined(sheet.region_week(region), {over: -1}), high=most_apart(terms))
            continue
        for earlier, later in terms.adjacent:
            both = sheet.slack("region-consecutive", 1, cost)
            days = combined(sheet.on_day.get((region, earlier), {}), sheet.on_day.get((region, later), {}))
            sheet.row("region-consecutive", combined(days, {both: -1}), high=1)
