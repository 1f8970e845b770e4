"""A session without a main lift."""

from __future__ import annotations

from collections.abc import Iterator

from setwright.solver.evaluation.evaluated_week import EvaluatedWeek
from setwright.solver.evaluation.finding import Finding, Rule
from setwright.solver.evaluation.resolved_brief import ResolvedBrief, ResolvedDay


def owed(resolved: ResolvedBrief) -> tuple[ResolvedDay, ...]:
    """The days that should have a main lift."""
    if resolved.goal == "efficiency" or resolved.minimum_dose:
        return ()
    return tuple(
        d
        for d in resolved.days
        if resolved.can(d, lambda e, d=d: resolved.rank(e, d) < 3 and resolved.builds(e, d))  # type: ignore[misc]
    )


def check(evaluated: EvaluatedWeek) -> Iterator[Finding]:
    for day in owed(evaluated.resolved):
        if not evaluated.count(lambda x: evaluated.resolved.builds(x.exercise, x.day), day.index):
            yield Finding("main-lift", f"{day.name} has no main lift", evaluated.resolved.penalty("main-lift", 1))


RULE = Rule(
    id="main-lift",
    kind="scored",
    sentence="Each session has a high-fatigue multi-joint lift that is no second choice (not in efficiency).",
    remedy="build the session around one free-weight lift",
    check=check,
)
