"""A deadlift in the week where no heavy squat is open."""

from __future__ import annotations

from setwright.solver.linear.linear_model import LinearModel, combined
from setwright.solver.rules.deadlift import applies, serves


def post(model: LinearModel) -> None:
    if applies(model.resolved):
        missing = model.violation("deadlift", 1, model.resolved.cost("deadlift"))
        model.constrain("deadlift", combined(model.count(serves), {missing: 1}), low=1)
