"""One exercise of a movement a day."""

from __future__ import annotations

from collections.abc import Iterator

from setwright.solver.evaluation.evaluated_week import EvaluatedWeek
from setwright.solver.evaluation.finding import Finding, Rule
from setwright.solver.evaluation.resolved_brief import ResolvedBrief, ResolvedDay

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
    for day, lines in zip(evaluated.resolved.days, evaluated.on, strict=True):
        for movement in sorted({line.exercise.movement for line in lines}):
            count = sum(1 for line in lines if line.exercise.movement == movement)
            if count > most_of_movement(evaluated.resolved, movement, day):
                yield Finding("movement-once", f"{day.name} has {count} exercises of {movement}")


RULE = Rule(
    id="movement-once",
    kind="hard",
    sentence="A day has at most one exercise of a movement: two knee lifts or horizontal presses in weeks of 4 days or on long days, two curls or extensions when that muscle is a priority.",
    remedy="move one of them to another day",
    check=check,
)
