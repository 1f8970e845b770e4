"""48 hours between two hard days for a muscle; exact on days, silent in the week without days."""

from __future__ import annotations

from setwright.solver.evaluation.evaluated_week import WHOLE
from setwright.solver.linear.linear_model import LinearModel, combined
from setwright.solver.linear.weekly_sets import direct_sets_of, sets_of


def post(model: LinearModel) -> None:
    if not model.daily:
        return
    resolved = model.resolved
    ends = (round(resolved.limit("hard-days") * WHOLE), round(resolved.limit("hard-days", "fractional") * WHOLE))
    cap = round(resolved.day_cap * WHOLE)
    for earlier, later in resolved.adjacent:
        for muscle in resolved.muscles:
            parts = [(direct_sets_of(model, muscle, d), sets_of(model, muscle, d)) for d in (earlier, later)]
            if not all(every for _, every in parts):
                continue
            second = model.variable(1)
            for (direct, every), sign, constant in zip(parts, (1, -1), (0, 1), strict=True):
                for found, limit in ((direct, ends[0]), (every, ends[1])):
                    room = cap - limit
                    model.constrain("hard-days", combined(found, {second: sign * -room}), high=limit + constant * room)
