"""High-fatigue sets a day."""

from __future__ import annotations

from setwright.solver.linear.linear_model import LinearModel
from setwright.solver.rules.high_fatigue_sets import most_high_fatigue


def post(model: LinearModel) -> None:
    most = most_high_fatigue(model.resolved)
    for group in model.groups:
        found = model.total(lambda e, o: o.sets if e.main_lift else 0, group.index)
        model.at_most_a_day("high-fatigue-sets", found, most, group.index)
