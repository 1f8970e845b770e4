"""No work of its own for a muscle above its band; excess from shared lifts costs."""

from __future__ import annotations

from setwright.solver.model.sets import grain_of, sets_of
from setwright.solver.model.sheet import Sheet, combined
from setwright.solver.reckoning.resolve import WIDE_OPEN
from setwright.solver.reckoning.view import WHOLE


def post(sheet: Sheet) -> None:
    terms = sheet.terms
    for muscle in terms.muscles.values():
        if muscle.exact_high or muscle.high >= WIDE_OPEN:
            continue
        found = sets_of(sheet, muscle.id)
        high = round(muscle.high * WHOLE)
        most = round(terms.day_cap * WHOLE) * len(terms.days)
        if sum(v * sheet.high[j] for j, v in found.items()) <= high or most <= high:
            continue
        grain = grain_of(found, high)
        cost = 0.0 if terms.off("band-high") else terms.cost("band-high") * grain / WHOLE
        room = (most - high) // grain + 1
        over = sheet.slack("band-high", room, cost)
        sheet.row("band-high", combined(found, {over: -grain}), high=high)
        own = sheet.count(lambda e, m=muscle: terms.own_muscle(e) == m.id)
        if own and not terms.off("band-top"):
            works = sheet.variable(1)
            for j in own:
                sheet.row("band-top", {j: 1, works: -sheet.high[j]}, high=0)
            sheet.row("band-top", {over: 1, works: room}, high=room)
