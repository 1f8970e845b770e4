"""Drop sets and rest-pause sets a day."""

from __future__ import annotations

from collections.abc import Iterator

from setwright.solver.evaluation.evaluated_week import EvaluatedWeek
from setwright.solver.evaluation.finding import Finding, Rule
from setwright.solver.evaluation.resolved_brief import ResolvedBrief


def most_techniques(resolved: ResolvedBrief) -> int:
    """How many exercises of a day may end in a drop set or rest-pause."""
    return round(resolved.limit("technique-cap", "efficiency" if resolved.goal == "efficiency" else None))


def check(evaluated: EvaluatedWeek) -> Iterator[Finding]:
    most = most_techniques(evaluated.resolved)
    for day, lines in zip(evaluated.resolved.days, evaluated.on, strict=True):
        total = sum(1 for x in lines if x.entry.technique != "straight")
        if total > most:
            yield Finding("technique-cap", f"{day.name} has {total} technique sets, at most {most}")


RULE = Rule(
    id="technique-cap",
    kind="hard",
    sentence="A day has at most 2 exercises that end in a drop set or rest-pause, 4 in efficiency.",
    remedy="make one straight sets",
    check=check,
)
