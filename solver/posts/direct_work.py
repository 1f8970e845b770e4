"""A sought muscle without a direct set."""

from __future__ import annotations

from setwright.solver.linear.linear_model import LinearModel, combined
from setwright.solver.rules.direct_work import needing


def post(model: LinearModel) -> None:
    for muscle in needing(model.resolved):
        found = model.count(lambda e, m=muscle: m in e.direct)
        missing = model.violation("direct-work", 1, model.resolved.cost("direct-work"))
        model.constrain("direct-work", combined(found, {missing: 1}), low=1)
