"""An exercise on a third day."""

from __future__ import annotations

from collections.abc import Iterator

from setwright.solver.evaluation.evaluated_week import EvaluatedWeek
from setwright.solver.evaluation.finding import Finding, Rule


def check(evaluated: EvaluatedWeek) -> Iterator[Finding]:
    free = round(evaluated.resolved.limit("third-day", "days"))
    for exercise, days in evaluated.days_of.items():
        if len(days) > free:
            name = evaluated.resolved.catalogue.exercises[exercise].name
            text = f"{name} stands on {len(days)} days"
            yield Finding("third-day", text, evaluated.resolved.penalty("third-day", len(days) - free))


RULE = Rule(
    id="third-day",
    kind="scored",
    sentence="An exercise on a third day of a week costs.",
    remedy="take another exercise of the slot on one of the days",
    check=check,
)
