"""A priority muscle with one exercise, or at one angle."""

from __future__ import annotations

from setwright.solver.linear.weekly_sets import sets_of
from setwright.solver.linear.linear_model import Expression, Sheet, combined
from setwright.solver.rules.priority_variety import exercises_due, slots_possible
from setwright.solver.evaluation.evaluated_week import WHOLE


def angles(sheet: Sheet, muscle: str, mine: list[int], cost: float) -> None:
    """Charge a muscle that passes the sets from which it wants two angles, and has fewer."""
    sets = sets_of(sheet, muscle)
    many = sheet.variable(1)
    limit = round(sheet.terms.limit("priority-variety", "sets") * WHOLE)
    room = round(sheet.terms.day_cap * WHOLE) * len(sheet.terms.days)
    sheet.row("priority-variety", combined(sets, {many: -room}), high=limit)
    slots: Expression = {}
    for slot in sorted({sheet.exercise(i).slot.id for i in mine}):
        there = sheet.variable(1)
        uses = {sheet.distinct[i]: -1 for i in mine if sheet.exercise(i).slot.id == slot}
        sheet.row("priority-variety", combined({there: 1}, uses), high=0)
        slots[there] = -1
    two = sheet.variable(1)
    sheet.row("priority-variety", combined({two: 2}, slots), high=0)
    one = sheet.slack("priority-variety", 1, cost)
    sheet.row("priority-variety", {one: 1, two: 1, many: -1}, low=0)


def post(sheet: Sheet) -> None:
    terms = sheet.terms
    cost = terms.cost("priority-variety")
    for muscle in terms.priorities:
        mine = [i for i in sorted(sheet.distinct) if muscle in sheet.exercise(i).direct]
        due = exercises_due(terms, muscle)
        short = sheet.slack("priority-variety", due, cost)
        sheet.row("priority-variety", combined({sheet.distinct[i]: 1 for i in mine}, {short: 1}), low=due)
        if slots_possible(terms, muscle) > 1:
            angles(sheet, muscle, mine, cost)
