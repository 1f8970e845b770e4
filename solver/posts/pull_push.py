"""Fewer pull sets than push sets."""

from __future__ import annotations

from setwright.solver.linear.linear_model import Sheet, combined
from setwright.solver.rules.pull_push import applies


def post(sheet: Sheet) -> None:
    terms = sheet.terms
    if not applies(terms):
        return
    sign = {"push": 1, "pull": -1}
    found = sheet.total(lambda e, o: o.sets * sign.get(e.region, 0) if e.multi_joint else 0)
    over = sheet.slack("pull-push", 200, terms.cost("pull-push"))
    sheet.row("pull-push", combined(found, {over: -1}), high=0)
