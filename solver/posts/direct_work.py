"""A sought muscle without a direct set."""

from __future__ import annotations

from setwright.solver.linear.linear_model import Sheet, combined
from setwright.solver.rules.direct_work import needing


def post(sheet: Sheet) -> None:
    for muscle in needing(sheet.terms):
        found = sheet.count(lambda e, m=muscle: m in e.direct)
        missing = sheet.slack("direct-work", 1, sheet.terms.cost("direct-work"))
        sheet.row("direct-work", combined(found, {missing: 1}), low=1)
