"""Weekly sets short of the band."""

from __future__ import annotations

from setwright.solver.evaluation.evaluated_week import WHOLE
from setwright.solver.linear.linear_model import LinearModel, combined
from setwright.solver.linear.weekly_sets import grain_of, sets_of
from setwright.solver.rules.band_low import counts, weight_key


def post(model: LinearModel) -> None:
    resolved = model.resolved
    for muscle in resolved.muscles.values():
        found = sets_of(model, muscle.id)
        if muscle.low > 0 and not muscle.exact_low and counts(resolved, muscle.id):
            low = round(muscle.low * WHOLE)
            grain = grain_of(found, low)
            cost = resolved.cost("band-low", weight_key(resolved, muscle.id)) * grain / WHOLE
            short = model.violation("band-low", low // grain, cost)
            model.constrain("band-low", combined(found, {short: grain}), low=low)
