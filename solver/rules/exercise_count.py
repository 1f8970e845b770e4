"""Exercises a day."""

from __future__ import annotations

from collections.abc import Iterator

from setwright.solver.evaluation.evaluated_week import EvaluatedWeek
from setwright.solver.evaluation.finding import Finding, Rule
from setwright.solver.evaluation.resolved_brief import ResolvedBrief, ResolvedDay


def most_exercises(resolved: ResolvedBrief, day: ResolvedDay) -> int:
    """How many exercises a day may have."""
    if resolved.experience == "novice":
        return round(resolved.limit("exercise-count", "novice"))
    if day.minutes > resolved.limit("exercise-count", "long-day-minutes"):
        return round(resolved.limit("exercise-count", "long-day"))
    return round(resolved.limit("exercise-count"))


def check(evaluated: EvaluatedWeek) -> Iterator[Finding]:
    for day, lines in zip(evaluated.resolved.days, evaluated.on, strict=True):
        most = most_exercises(evaluated.resolved, day)
        if len(lines) > most:
            yield Finding("exercise-count", f"{day.name} has {len(lines)} exercises, at most {most}")


RULE = Rule(
    id="exercise-count",
    kind="hard",
    sentence="A day has at most 7 exercises, 8 above 60 minutes, 6 for a novice.",
    remedy="drop an exercise",
    check=check,
)
