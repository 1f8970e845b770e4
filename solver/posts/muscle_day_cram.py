"""A muscle's sets in a day above what pays."""

from __future__ import annotations

from setwright.solver.evaluation.evaluated_week import WHOLE
from setwright.solver.linear.linear_model import LinearModel, combined
from setwright.solver.linear.weekly_sets import grain_of, sets_of


def post(model: LinearModel) -> None:
    resolved = model.resolved
    most = round(resolved.limit("muscle-day-cram", "sets") * WHOLE)
    for group in model.groups:
        for muscle in resolved.muscles:
            found = sets_of(model, muscle, group.index)
            if sum(v * model.high[j] for j, v in found.items()) > most:
                grain = grain_of(found, most)
                cost = resolved.cost("muscle-day-cram") * grain / WHOLE
                over = model.violation("muscle-day-cram", 20 * WHOLE // grain * len(group.days), cost)
                model.at_most_a_day("muscle-day-cram", combined(found, {over: -grain}), most, group.index)
