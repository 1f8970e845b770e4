"""A priority muscle on fewer than two days."""

from __future__ import annotations

from collections.abc import Iterator

from setwright.solver.evaluation.finding import Finding, Rule
from setwright.solver.evaluation.resolved_brief import Terms
from setwright.solver.evaluation.evaluated_week import View


def days_due(terms: Terms, muscle: str) -> int:
    """The days of direct work a priority muscle should have, as far as days and kit allow."""
    possible = sum(1 for d in terms.days if terms.can(d, lambda e: muscle in e.direct))
    return min(round(terms.limit("priority-days", "days")), possible)


def check(view: View) -> Iterator[Finding]:
    for muscle in view.terms.priorities:
        due = days_due(view.terms, muscle)
        short = due - view.direct_days(muscle)
        if short > 0:
            text = f"{muscle} has direct work on {due - short} of {due} days"
            yield Finding("priority-days", text, view.terms.charge("priority-days", short))


RULE = Rule(
    id="priority-days",
    kind="scored",
    sentence="A priority muscle has direct work on 2 days or more.",
    remedy="give it direct work on another day",
    check=check,
)
