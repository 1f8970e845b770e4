"""Days a week for one exercise."""

from __future__ import annotations

from collections.abc import Iterator

from setwright.catalogue.entries import Exercise
from setwright.solver.evaluation.evaluated_week import EvaluatedWeek
from setwright.solver.evaluation.finding import Finding, Rule
from setwright.solver.evaluation.resolved_brief import ResolvedBrief


def most_days(resolved: ResolvedBrief, exercise: Exercise) -> int:
    """How many days of a week an exercise may stand on."""
    return 1 if exercise.once_a_week else round(resolved.limit("third-day", "most"))


def check(evaluated: EvaluatedWeek) -> Iterator[Finding]:
    for exercise, days in evaluated.days_of.items():
        known = evaluated.resolved.catalogue.exercises[exercise]
        most = most_days(evaluated.resolved, known)
        if len(days) > most:
            yield Finding("exercise-days", f"{known.name} stands on {len(days)} days, at most {most}")


RULE = Rule(
    id="exercise-days",
    kind="hard",
    sentence="An exercise stands on at most 3 days of a week, a deadlift on one.",
    remedy="take another exercise of the slot",
    check=check,
)
