"""The movements every week has."""

from __future__ import annotations

from setwright.solver.linear.linear_model import Sheet, combined
from setwright.solver.rules.coverage import wanted


def post(sheet: Sheet) -> None:
    for _, movements in wanted(sheet.terms):
        found = sheet.count(lambda e, ids=movements: e.multi_joint and e.movement in ids)
        missing = sheet.slack("coverage", 1, sheet.terms.cost("coverage"))
        sheet.row("coverage", combined(found, {missing: 1}), low=1)
