"""A region on two consecutive days."""

from __future__ import annotations

from setwright.solver.evaluation.resolved_brief import ResolvedBrief
from setwright.solver.linear.linear_model import LinearModel, combined
from setwright.solver.rules.full_session import REGIONS


def most_apart(resolved: ResolvedBrief) -> int:
    """The most days of the week of which no two are consecutive."""
    count = len(resolved.days)
    return max(
        mask.bit_count()
        for mask in range(2**count)
        if not any(mask >> i & 1 and mask >> j & 1 for i, j in resolved.adjacent)
    )


def post(model: LinearModel) -> None:
    resolved = model.resolved
    if len(resolved.days) < resolved.limit("theme", "least-days"):
        return
    cost = resolved.cost("region-consecutive")
    for region in REGIONS:
        if not (model.daily or model.patterned):
            over = model.violation("region-consecutive", len(resolved.days), cost)
            model.constrain(
                "region-consecutive", combined(model.region_week(region), {over: -1}), high=most_apart(resolved)
            )
            continue
        for earlier, later in resolved.adjacent:
            both = model.violation("region-consecutive", 1, cost)
            days = combined(model.on_day.get((region, earlier), {}), model.on_day.get((region, later), {}))
            model.constrain("region-consecutive", combined(days, {both: -1}), high=1)
