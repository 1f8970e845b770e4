"""A multi-joint lift of two sets."""

from __future__ import annotations

from setwright.solver.linear.linear_model import LinearModel
from setwright.solver.rules.token_sets import applies


def post(model: LinearModel) -> None:
    resolved = model.resolved
    for group in model.groups:
        day = model.instance.resolved.days[group.days[0]]
        found = model.total(lambda e, o, d=day: 1 if applies(resolved, e, o.sets, d) else 0, group.index)
        model.penalise("token-sets", found, resolved.cost("token-sets"))
