"""A session of a short week without push, pull or lower work."""

from __future__ import annotations

from setwright.solver.linear.linear_model import LinearModel, combined
from setwright.solver.rules.full_session import REGIONS, owed


def post(model: LinearModel) -> None:
    due = owed(model.resolved)
    for group in model.groups:
        for region in REGIONS:
            if any(day.index in group.days and r == region for day, r in due):
                trained = model.regions.get((region, group.index), {})
                missing = model.violation("full-session", len(group.days), model.resolved.cost("full-session"))
                model.at_least_a_day("full-session", combined(trained, {missing: 1}), 1, group.index)
