"""Fewer pull sets than push sets."""

from __future__ import annotations

from setwright.solver.linear.linear_model import LinearModel, combined
from setwright.solver.rules.pull_push import applies


def post(model: LinearModel) -> None:
    resolved = model.resolved
    if not applies(resolved):
        return
    sign = {"push": 1, "pull": -1}
    found = model.total(lambda e, o: o.sets * sign.get(e.region, 0) if e.multi_joint else 0)
    over = model.violation("pull-push", 200, resolved.cost("pull-push"))
    model.constrain("pull-push", combined(found, {over: -1}), high=0)
