"""An exercise on a third day."""

from __future__ import annotations

from collections.abc import Iterator

from setwright.solver.evaluation.finding import Finding, Rule
from setwright.solver.evaluation.evaluated_week import View


def check(view: View) -> Iterator[Finding]:
    free = round(view.terms.limit("third-day", "days"))
    for exercise, days in view.days_of.items():
        if len(days) > free:
            name = view.terms.catalogue.exercises[exercise].name
            text = f"{name} stands on {len(days)} days"
            yield Finding("third-day", text, view.terms.charge("third-day", len(days) - free))


RULE = Rule(
    id="third-day",
    kind="scored",
    sentence="An exercise on a third day of a week costs.",
    remedy="take another exercise of the slot on one of the days",
    check=check,
)
