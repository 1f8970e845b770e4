"""Drop sets and rest-pause sets a day."""

from __future__ import annotations

from setwright.solver.linear.linear_model import LinearModel
from setwright.solver.rules.technique_cap import most_techniques


def post(model: LinearModel) -> None:
    most = most_techniques(model.resolved)
    for group in model.groups:
        found = model.total(lambda e, o: 1 if o.technique != "straight" else 0, group.index)
        model.at_most_a_day("technique-cap", found, most, group.index)
