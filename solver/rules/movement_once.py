"""One exercise of a movement a day."""

from __future__ import annotations

from collections.abc import Iterator

from setwright.solver.evaluation.finding import Finding, Rule
from setwright.solver.evaluation.resolved_brief import DayTerms, Terms
from setwright.solver.evaluation.evaluated_week import View

TWICE = ("knee", "horizontal-press")
ARMS = {"curl": "biceps", "extension": "triceps"}


def most_of_movement(terms: Terms, movement: str, day: DayTerms) -> int:
    """How many exercises of a movement a day may have."""
    once = round(terms.limit("movement-once"))
    if movement in TWICE:
        many = len(terms.days) >= terms.limit("movement-once", "twice-days")
        long = day.minutes >= terms.limit("movement-once", "twice-minutes")
        return once + (1 if many or long else 0)
    if movement in ARMS and ARMS[movement] in terms.priorities:
        return once + 1
    return once


def check(view: View) -> Iterator[Finding]:
    for day, lines in zip(view.terms.days, view.on, strict=True):
        for movement in sorted({line.exercise.movement for line in lines}):
            count = sum(1 for line in lines if line.exercise.movement == movement)
            if count > most_of_movement(view.terms, movement, day):
                yield Finding("movement-once", f"{day.name} has {count} exercises of {movement}")


RULE = Rule(
    id="movement-once",
    kind="hard",
    sentence="A day has at most one exercise of a movement: two knee lifts or horizontal presses in weeks of 4 days or on long days, two curls or extensions when that muscle is a priority.",
    remedy="move one of them to another day",
    check=check,
)
