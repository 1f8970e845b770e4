"""A flat press or dip in the week."""

from __future__ import annotations

from setwright.solver.linear.linear_model import Sheet, combined
from setwright.solver.rules.flat_press import applies, serves


def post(sheet: Sheet) -> None:
    if applies(sheet.terms):
        missing = sheet.slack("flat-press", 1, sheet.terms.cost("flat-press"))
        sheet.row("flat-press", combined(sheet.count(serves), {missing: 1}), low=1)
