"""One exercise of a movement a day, or two."""

from __future__ import annotations

from collections.abc import Iterator

from setwright.solver.evaluation.evaluated_week import EvaluatedWeek
from setwright.solver.evaluation.finding import Finding
from setwright.solver.evaluation.resolved_brief import ResolvedBrief
from setwright.solver.evaluation.resolved_day import ResolvedDay
from setwright.solver.linear.linear_model import LinearModel
from setwright.solver.linear.rule import Rule

TWICE = ("knee", "horizontal-press")
ARMS = {"curl": "biceps", "extension": "triceps"}


def most_of_movement(resolved: ResolvedBrief, movement: str, day: ResolvedDay) -> int:
    """How many exercises of a movement a day may have."""
    once = round(resolved.limit("movement-once"))
    if movement in TWICE:
        many = len(resolved.days) >= resolved.limit("movement-once", "twice-days")
        long = day.minutes >= resolved.limit("movement-once", "twice-minutes")
        return once + (1 if many or long else 0)
    if movement in ARMS and ARMS[movement] in resolved.priorities:
        return once + 1
    return once


def check(evaluated: EvaluatedWeek) -> Iterator[Finding]:
    """A finding for each movement of which a day has too many exercises."""
    for day, lines in zip(evaluated.resolved.days, evaluated.on, strict=True):
        for movement in sorted({line.exercise.movement for line in lines}):
            count = sum(1 for line in lines if line.exercise.movement == movement)
            most = most_of_movement(evaluated.resolved, movement, day)
            if count > most:
                yield Finding("movement-once", subject=movement, amount=count, limit=most, days=(day.index,))


def post(model: LinearModel) -> None:
    """At most so many exercises of each movement on each day."""
    movements = sorted({slot.movement for slot in model.resolved.catalogue.slots.values()})
    for group in model.groups:
        for movement in movements:
            found = model.count(lambda e, m=movement: e.movement == m, group.index)
            if found:
                most = most_of_movement(model.resolved, movement, model.day(group.index))
                model.at_most_a_day("movement-once", found, most, group.index)


RULE = Rule(
    id="movement-once",
    kind="hard",
    scope="planned weeks",
    sentence="A day has at most {limit:g} exercise of a movement; one more for knee lifts and horizontal presses in weeks of {twice_days:g} or more days or sessions of {twice_minutes:g} or more minutes, and for curls or extensions when that muscle is a priority.",
    remedy="move one of them to another day",
    post=post,
    check=check,
    says="{day} has {amount} exercises of {subject}",
)
