"""A priority muscle with one exercise, or at one angle."""

from __future__ import annotations

from setwright.solver.evaluation.evaluated_week import WHOLE
from setwright.solver.linear.linear_model import Expression, LinearModel, combined
from setwright.solver.linear.weekly_sets import sets_of
from setwright.solver.rules.priority_variety import exercises_due, slots_possible


def angles(model: LinearModel, muscle: str, mine: list[int], cost: float) -> None:
    """Charge a muscle that passes the sets from which it wants two angles, and has fewer."""
    sets = sets_of(model, muscle)
    many = model.variable(1)
    limit = round(model.resolved.limit("priority-variety", "sets") * WHOLE)
    room = round(model.resolved.day_cap * WHOLE) * len(model.resolved.days)
    model.constrain("priority-variety", combined(sets, {many: -room}), high=limit)
    slots: Expression = {}
    for slot in sorted({model.exercise(i).slot.id for i in mine}):
        there = model.variable(1)
        uses = {model.distinct[i]: -1 for i in mine if model.exercise(i).slot.id == slot}
        model.constrain("priority-variety", combined({there: 1}, uses), high=0)
        slots[there] = -1
    two = model.variable(1)
    model.constrain("priority-variety", combined({two: 2}, slots), high=0)
    one = model.violation("priority-variety", 1, cost)
    model.constrain("priority-variety", {one: 1, two: 1, many: -1}, low=0)


def post(model: LinearModel) -> None:
    resolved = model.resolved
    cost = resolved.cost("priority-variety")
    for muscle in resolved.priorities:
        mine = [i for i in sorted(model.distinct) if muscle in model.exercise(i).direct]
        due = exercises_due(resolved, muscle)
        short = model.violation("priority-variety", due, cost)
        model.constrain("priority-variety", combined({model.distinct[i]: 1 for i in mine}, {short: 1}), low=due)
        if slots_possible(resolved, muscle) > 1:
            angles(model, muscle, mine, cost)
