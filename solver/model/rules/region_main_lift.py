"""A region without a main lift in the week."""

from __future__ import annotations

from setwright.solver.model.sheet import Sheet, combined
from setwright.solver.reckoning.rules.region_main_lift import owed


def post(sheet: Sheet) -> None:
    for region in owed(sheet.terms):
        found = sheet.count(lambda e, r=region: e.main_lift and e.region == r)
        missing = sheet.slack("region-main-lift", 1, sheet.terms.cost("region-main-lift"))
        sheet.row("region-main-lift", combined(found, {missing: 1}), low=1)
