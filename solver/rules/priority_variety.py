"""A priority muscle with one exercise, or at one angle."""

from __future__ import annotations

from collections.abc import Iterator

from setwright.solver.evaluation.evaluated_week import WHOLE, EvaluatedWeek
from setwright.solver.evaluation.finding import Finding
from setwright.solver.evaluation.resolved_brief import ResolvedBrief
from setwright.solver.linear.linear_model import Expression, LinearModel, combined
from setwright.solver.linear.rule import Rule
from setwright.solver.linear.weekly_sets import sets_of

ANGLES = 2
"""Angles that a priority muscle of many sets should have."""


def exercises_due(resolved: ResolvedBrief, muscle: str) -> int:
    """The exercises a priority muscle should have, as far as the kit allows."""
    possible = {e.id for day in resolved.open_on for e in day if muscle in e.direct}
    return min(round(resolved.limit("priority-variety", "exercises")), len(possible))


def slots_possible(resolved: ResolvedBrief, muscle: str) -> int:
    """How many angles the kit has for a muscle."""
    return len({e.slot.id for day in resolved.open_on for e in day if muscle in e.direct})


def check(evaluated: EvaluatedWeek) -> Iterator[Finding]:
    """A finding for each priority muscle with too few exercises, or with one angle for many sets."""
    resolved = evaluated.resolved
    for muscle in resolved.priorities:
        mine = [line for line in evaluated.lines if muscle in line.exercise.direct]
        due, count = exercises_due(resolved, muscle), len({line.exercise.id for line in mine})
        if count < due:
            cost = resolved.penalty("priority-variety", due - count)
            yield Finding("priority-variety", cost, "exercises", subject=muscle, amount=count, limit=due)
        many = evaluated.weekly_sets(muscle) / WHOLE > resolved.limit("priority-variety", "sets")
        angles = len({line.exercise.slot.id for line in mine})
        if many and angles < ANGLES <= slots_possible(resolved, muscle):
            cost = resolved.penalty("priority-variety", 1)
            yield Finding("priority-variety", cost, "angles", subject=muscle, amount=angles, limit=ANGLES)


def post(model: LinearModel) -> None:
    """Charge each exercise that a priority muscle is short, and one angle for many sets."""
    resolved = model.resolved
    cost = resolved.cost("priority-variety")
    for muscle in resolved.priorities:
        mine = [i for i in sorted(model.distinct) if muscle in model.exercise(i).direct]
        due = exercises_due(resolved, muscle)
        short = model.violation("priority-variety", due, cost)
        model.constrain("priority-variety", combined({model.distinct[i]: 1 for i in mine}, {short: 1}), low=due)
        if slots_possible(resolved, muscle) >= ANGLES:
            _post_angles(model, muscle, mine, cost)


def _post_angles(model: LinearModel, muscle: str, mine: list[int], cost: float) -> None:
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
    enough = model.variable(1)
    model.constrain("priority-variety", combined({enough: ANGLES}, slots), high=0)
    lacking = model.violation("priority-variety", 1, cost)
    model.constrain("priority-variety", {lacking: 1, enough: 1, many: -1}, low=0)


RULE = Rule(
    id="priority-variety",
    kind="scored",
    sentence="A priority muscle should have {exercises:g} exercises, and at different angles once it has more than {sets:g} weekly sets.",
    remedy="give it a second exercise at another angle",
    post=post,
    check=check,
    says={"exercises": "{subject} has {amount} of {limit} exercises", "angles": "{subject} has one angle"},
)
