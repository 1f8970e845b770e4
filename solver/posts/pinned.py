"""What the brief pins."""

from __future__ import annotations

from setwright.solver.brief.schema import Pin
from setwright.solver.linear.columns import Column
from setwright.solver.linear.linear_model import LinearModel
from setwright.solver.rules.pinned import pin_words


def meets(model: LinearModel, pin: Pin, column: Column) -> bool:
    """Whether a column can be what a pin asks for."""
    days = model.groups[column.group].days
    if pin.day is not None and not any(model.resolved.days[d].weekday == pin.day for d in days):
        return False
    ids = [model.exercise(a.cls).id for a in column.assignments]
    if pin.exercise not in ids:
        return False
    assignment = column.assignments[ids.index(pin.exercise)]
    if pin.sets not in (None, assignment.prescription.sets):
        return False
    if pin.pair_with is None:
        return True
    return pin.pair_with in ids if len(ids) == 2 else assignment.prescription.paired


def post(model: LinearModel) -> None:
    for pin in model.resolved.brief.pins:
        found = {j: 1 for j, column in enumerate(model.columns) if meets(model, pin, column)}
        model.demand("pinned", pin_words(pin), found, 1)
