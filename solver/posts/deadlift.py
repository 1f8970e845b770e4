"""A deadlift in the week where no heavy squat is open."""

from __future__ import annotations

from setwright.solver.linear.linear_model import Sheet, combined
from setwright.solver.rules.deadlift import applies, serves


def post(sheet: Sheet) -> None:
    if applies(sheet.terms):
        missing = sheet.slack("deadlift", 1, sheet.terms.cost("deadlift"))
        sheet.row("deadlift", combined(sheet.count(serves), {missing: 1}), low=1)
