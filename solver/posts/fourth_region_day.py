"""A region on a fourth day."""

from __future__ import annotations

from setwright.solver.linear.linear_model import LinearModel, combined
from setwright.solver.rules.full_session import REGIONS


def post(model: LinearModel) -> None:
    resolved = model.resolved
    if len(resolved.days) < resolved.limit("theme", "least-days"):
        return
    most = round(resolved.limit("fourth-region-day", "days"))
    for region in REGIONS:
        over = model.violation("fourth-region-day", len(resolved.days), resolved.cost("fourth-region-day"))
        model.constrain("fourth-region-day", combined(model.region_week(region), {over: -1}), high=most)
