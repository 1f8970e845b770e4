"""Weekly sets short of the band."""

from __future__ import annotations

from setwright.solver.linear.weekly_sets import grain_of, sets_of
from setwright.solver.linear.linear_model import Sheet, combined
from setwright.solver.rules.band_low import counts, weight_key
from setwright.solver.evaluation.evaluated_week import WHOLE


def post(sheet: Sheet) -> None:
    terms = sheet.terms
    for muscle in terms.muscles.values():
        found = sets_of(sheet, muscle.id)
        if muscle.low > 0 and not muscle.exact_low and counts(terms, muscle.id):
            low = round(muscle.low * WHOLE)
            grain = grain_of(found, low)
            cost = terms.cost("band-low", weight_key(terms, muscle.id)) * grain / WHOLE
            short = sheet.slack("band-low", low // grain, cost)
            sheet.row("band-low", combined(found, {short: grain}), low=low)
