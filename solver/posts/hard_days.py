"""48 hours between two hard days for a muscle; exact on days, silent in the week without days."""

from __future__ import annotations

from setwright.solver.linear.weekly_sets import direct_sets_of, sets_of
from setwright.solver.linear.linear_model import Sheet, combined
from setwright.solver.evaluation.evaluated_week import WHOLE


def post(sheet: Sheet) -> None:
    if not sheet.daily:
        return
    terms = sheet.terms
    ends = (round(terms.limit("hard-days") * WHOLE), round(terms.limit("hard-days", "fractional") * WHOLE))
    cap = round(terms.day_cap * WHOLE)
    for earlier, later in terms.adjacent:
        for muscle in terms.muscles:
            parts = [(direct_sets_of(sheet, muscle, d), sets_of(sheet, muscle, d)) for d in (earlier, later)]
            if not all(every for _, every in parts):
                continue
            second = sheet.variable(1)
            for (direct, every), sign, constant in zip(parts, (1, -1), (0, 1), strict=True):
                for found, limit in ((direct, ends[0]), (every, ends[1])):
                    room = cap - limit
                    sheet.row("hard-days", combined(found, {second: sign * -room}), high=limit + constant * room)
