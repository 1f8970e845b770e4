"""A leg curl in the week."""

from __future__ import annotations

from setwright.solver.linear.linear_model import LinearModel, combined
from setwright.solver.rules.knee_flexion import applies, serves


def post(model: LinearModel) -> None:
    if applies(model.resolved):
        missing = model.violation("knee-flexion", 1, model.resolved.cost("knee-flexion"))
        model.constrain("knee-flexion", combined(model.count(serves), {missing: 1}), low=1)
