"""A flat press or dip in the week."""

from __future__ import annotations

from setwright.solver.linear.linear_model import LinearModel, combined
from setwright.solver.rules.flat_press import applies, serves


def post(model: LinearModel) -> None:
    if applies(model.resolved):
        missing = model.violation("flat-press", 1, model.resolved.cost("flat-press"))
        model.constrain("flat-press", combined(model.count(serves), {missing: 1}), low=1)
