"""One exercise of a movement a day, or two."""

from __future__ import annotations

from setwright.solver.linear.linear_model import LinearModel
from setwright.solver.rules.movement_once import most_of_movement


def post(model: LinearModel) -> None:
    movements = sorted({slot.movement for slot in model.resolved.catalogue.slots.values()})
    for group in model.groups:
        for movement in movements:
            found = model.count(lambda e, m=movement: e.movement == m, group.index)
            if found:
                most = most_of_movement(model.resolved, movement, model.day(group.index))
                model.at_most_a_day("movement-once", found, most, group.index)
