"""A priority muscle on fewer than two days."""

from __future__ import annotations

from collections.abc import Iterator

from setwright.solver.evaluation.evaluated_week import EvaluatedWeek
from setwright.solver.evaluation.finding import Finding, Rule
from setwright.solver.evaluation.resolved_brief import ResolvedBrief


def days_due(resolved: ResolvedBrief, muscle: str) -> int:
    """The days of direct work a priority muscle should have, as far as days and kit allow."""
    possible = sum(1 for d in resolved.days if resolved.can(d, lambda e: muscle in e.direct))
    return min(round(resolved.limit("priority-days", "days")), possible)


def check(evaluated: EvaluatedWeek) -> Iterator[Finding]:
    for muscle in evaluated.resolved.priorities:
        due = days_due(evaluated.resolved, muscle)
        short = due - evaluated.direct_days(muscle)
        if short > 0:
            text = f"{muscle} has direct work on {due - short} of {due} days"
            yield Finding("priority-days", text, evaluated.resolved.penalty("priority-days", short))


RULE = Rule(
    id="priority-days",
    kind="scored",
    sentence="A priority muscle has direct work on 2 days or more.",
    remedy="give it direct work on another day",
    check=check,
)
