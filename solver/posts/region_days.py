"""A region on fewer than two days of a longer week."""

from __future__ import annotations

from setwright.solver.linear.linear_model import LinearModel, combined
from setwright.solver.rules.full_session import REGIONS, wanted
from setwright.solver.rules.region_days import possible


def post(model: LinearModel) -> None:
    resolved = model.resolved
    if len(resolved.days) < resolved.limit("region-days", "least-days"):
        return
    for region in REGIONS:
        if wanted(resolved, region) and possible(resolved, region) > 1:
            short = model.violation("region-days", 2, resolved.cost("region-days"))
            model.constrain("region-days", combined(model.region_week(region), {short: 1}), low=2)
