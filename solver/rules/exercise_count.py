"""Exercises a day."""

from __future__ import annotations

from collections.abc import Iterator

from setwright.solver.evaluation.finding import Finding, Rule
from setwright.solver.evaluation.resolved_brief import DayTerms, Terms
from setwright.solver.evaluation.evaluated_week import View


def most_exercises(terms: Terms, day: DayTerms) -> int:
    """How many exercises a day may have."""
    if terms.experience == "novice":
        return round(terms.limit("exercise-count", "novice"))
    if day.minutes > terms.limit("exercise-count", "long-day-minutes"):
        return round(terms.limit("exercise-count", "long-day"))
    return round(terms.limit("exercise-count"))


def check(view: View) -> Iterator[Finding]:
    for day, lines in zip(view.terms.days, view.on, strict=True):
        most = most_exercises(view.terms, day)
        if len(lines) > most:
            yield Finding("exercise-count", f"{day.name} has {len(lines)} exercises, at most {most}")


RULE = Rule(
    id="exercise-count",
    kind="hard",
    sentence="A day has at most 7 exercises, 8 above 60 minutes, 6 for a novice.",
    remedy="drop an exercise",
    check=check,
)
