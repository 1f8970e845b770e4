"""Heavy spine loads on consecutive days; exact on days, silent in the week without days."""

from __future__ import annotations

from setwright.solver.linear.linear_model import LinearModel


def post(model: LinearModel) -> None:
    if not model.daily:
        return
    resolved = model.resolved
    heavy = resolved.limit("axial-consecutive", "axial")
    cost = resolved.cost("axial-consecutive")
    loaded: dict[int, int] = {}
    for group in model.groups:
        found = model.count(lambda e: e.axial >= heavy, group.index)
        if found:
            loaded[group.index] = held = model.variable(1)
            for j in found:
                model.constrain("axial-consecutive", {j: 1, held: -1}, high=0)
    for earlier, later in resolved.adjacent:
        if earlier in loaded and later in loaded:
            both = model.violation("axial-consecutive", 1, cost)
            model.constrain("axial-consecutive", {loaded[earlier]: 1, loaded[later]: 1, both: -1}, high=1)
