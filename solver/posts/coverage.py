"""The movements every week has."""

from __future__ import annotations

from setwright.solver.linear.linear_model import LinearModel, combined
from setwright.solver.rules.coverage import wanted


def post(model: LinearModel) -> None:
    for _, movements in wanted(model.resolved):
        found = model.count(lambda e, ids=movements: e.multi_joint and e.movement in ids)
        missing = model.violation("coverage", 1, model.resolved.cost("coverage"))
        model.constrain("coverage", combined(found, {missing: 1}), low=1)
