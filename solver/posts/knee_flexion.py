"""A leg curl in the week."""

from __future__ import annotations

from setwright.solver.linear.linear_model import Sheet, combined
from setwright.solver.rules.knee_flexion import applies, serves


def post(sheet: Sheet) -> None:
    if applies(sheet.terms):
        missing = sheet.slack("knee-flexion", 1, sheet.terms.cost("knee-flexion"))
        sheet.row("knee-flexion", combined(sheet.count(serves), {missing: 1}), low=1)
