"""Weekly sets within the band the brief says."""

from __future__ import annotations

from setwright.solver.evaluation.evaluated_week import WHOLE
from setwright.solver.linear.linear_model import LinearModel
from setwright.solver.linear.weekly_sets import sets_of


def post(model: LinearModel) -> None:
    for muscle in model.resolved.muscles.values():
        found = sets_of(model, muscle.id)
        if muscle.exact_low:
            model.demand("exact-band", f"{muscle.id} at least {muscle.low:g} sets", found, round(muscle.low * WHOLE))
        if muscle.exact_high:
            model.constrain("exact-band", found, high=round(muscle.high * WHOLE))
