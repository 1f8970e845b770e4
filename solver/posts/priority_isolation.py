"""A small priority muscle without single-joint work."""

from __future__ import annotations

from setwright.solver.linear.linear_model import LinearModel, combined
from setwright.solver.linear.weekly_sets import grain_of
from setwright.solver.rules.priority_isolation import isolation_due


def post(model: LinearModel) -> None:
    resolved = model.resolved
    for muscle in resolved.priorities:
        due = round(100 * isolation_due(resolved, muscle))
        found = model.total(lambda e, o, m=muscle: 0 if e.multi_joint or m not in e.direct else o.credited)
        if due and found:
            grain = grain_of(found, due)
            short = model.violation(
                "priority-isolation", due // grain, resolved.cost("priority-isolation") * grain / 100
            )
            model.constrain("priority-isolation", combined(found, {short: grain}), low=due)
