"""One exercise of a slot a day."""

from __future__ import annotations

from setwright.solver.linear.linear_model import LinearModel


def post(model: LinearModel) -> None:
    for group in model.groups:
        for slot in model.resolved.catalogue.slots:
            found = model.count(lambda e, s=slot: e.slot.id == s, group.index)
            if found:
                model.at_most_a_day("slot-once", found, 1, group.index)
