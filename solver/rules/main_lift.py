"""A session without a main lift."""

from __future__ import annotations

from collections.abc import Iterator

from setwright.solver.evaluation.finding import Finding, Rule
from setwright.solver.evaluation.resolved_brief import DayTerms, Terms
from setwright.solver.evaluation.evaluated_week import View


def owed(terms: Terms) -> tuple[DayTerms, ...]:
    """The days that should have a main lift."""
    if terms.goal == "efficiency" or terms.minimum_dose:
        return ()
    return tuple(d for d in terms.days if terms.can(d, lambda e, d=d: terms.rank(e, d) < 3 and terms.builds(e, d)))  # type: ignore[misc]


def check(view: View) -> Iterator[Finding]:
    for day in owed(view.terms):
        if not view.count(lambda x: view.terms.builds(x.exercise, x.day), day.index):
            yield Finding("main-lift", f"{day.name} has no main lift", view.terms.charge("main-lift", 1))


RULE = Rule(
    id="main-lift",
    kind="scored",
    sentence="Each session has a high-fatigue multi-joint lift that is no second choice (not in efficiency).",
    remedy="build the session around one free-weight lift",
    check=check,
)
