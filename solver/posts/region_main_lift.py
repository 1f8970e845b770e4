"""A region or a movement without a main lift in the week."""

from __future__ import annotations

from setwright.solver.linear.linear_model import Expression, LinearModel, combined
from setwright.solver.rules.region_main_lift import owed, serves


def post(model: LinearModel) -> None:
    resolved = model.resolved
    for part in owed(resolved):
        found: Expression = {}
        for group in model.groups:
            day = resolved.days[group.days[0]]
            lifts = model.count(lambda e, p=part, d=day: serves(resolved, p, e, d), group.index)
            found = combined(found, lifts)
        missing = model.violation("region-main-lift", 1, resolved.cost("region-main-lift"))
        model.constrain("region-main-lift", combined(found, {missing: 1}), low=1)
