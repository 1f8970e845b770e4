"""A small priority muscle without single-joint work."""

from __future__ import annotations

from setwright.solver.linear.weekly_sets import grain_of
from setwright.solver.linear.linear_model import Sheet, combined
from setwright.solver.rules.priority_isolation import isolation_due


def post(sheet: Sheet) -> None:
    terms = sheet.terms
    for muscle in terms.priorities:
        due = round(100 * isolation_due(terms, muscle))
        found = sheet.total(lambda e, o, m=muscle: 0 if e.multi_joint or m not in e.direct else o.credited)
        if due and found:
            grain = grain_of(found, due)
            short = sheet.slack("priority-isolation", due // grain, terms.cost("priority-isolation") * grain / 100)
            sheet.row("priority-isolation", combined(found, {short: grain}), low=due)
