"""Weekly sets within the band the brief says."""

from __future__ import annotations

from setwright.solver.linear.weekly_sets import sets_of
from setwright.solver.linear.linear_model import Sheet
from setwright.solver.evaluation.evaluated_week import WHOLE


def post(sheet: Sheet) -> None:
    for muscle in sheet.terms.muscles.values():
        found = sets_of(sheet, muscle.id)
        if muscle.exact_low:
            sheet.demand("exact-band", f"{muscle.id} at least {muscle.low:g} sets", found, round(muscle.low * WHOLE))
        if muscle.exact_high:
            sheet.row("exact-band", found, high=round(muscle.high * WHOLE))
