"""Days a week for one exercise."""

from __future__ import annotations

from collections.abc import Iterator

from setwright.catalogue.entries import Exercise
from setwright.solver.evaluation.finding import Finding, Rule
from setwright.solver.evaluation.resolved_brief import Terms
from setwright.solver.evaluation.evaluated_week import View


def most_days(terms: Terms, exercise: Exercise) -> int:
    """How many days of a week an exercise may stand on."""
    return 1 if exercise.once_a_week else round(terms.limit("third-day", "most"))


def check(view: View) -> Iterator[Finding]:
    for exercise, days in view.days_of.items():
        known = view.terms.catalogue.exercises[exercise]
        most = most_days(view.terms, known)
        if len(days) > most:
            yield Finding("exercise-days", f"{known.name} stands on {len(days)} days, at most {most}")


RULE = Rule(
    id="exercise-days",
    kind="hard",
    sentence="An exercise stands on at most 3 days of a week, a deadlift on one.",
    remedy="take another exercise of the slot",
    check=check,
)
