"""A session without a main lift."""

from __future__ import annotations

from collections.abc import Iterator

from setwright.solver.evaluation.evaluated_week import EvaluatedWeek
from setwright.solver.evaluation.finding import Finding
from setwright.solver.evaluation.resolved_brief import ResolvedBrief
from setwright.solver.linear.linear_model import LinearModel, combined
from setwright.solver.linear.rule import Rule


def owed(resolved: ResolvedBrief) -> tuple[int, ...]:
    """The days that should have a main lift."""
    if resolved.goal == "efficiency" or resolved.minimum_dose:
        return ()
    return tuple(
        day.index
        for day in resolved.days
        if resolved.can(day, lambda e, d=day: resolved.rank(e, d) < 3 and resolved.builds(e, d))
    )


def check(evaluated: EvaluatedWeek) -> Iterator[Finding]:
    """A finding for each session without a main lift."""
    for day in owed(evaluated.resolved):
        if not evaluated.count(lambda x: evaluated.resolved.builds(x.exercise, x.day), day):
            yield Finding("main-lift", evaluated.resolved.penalty("main-lift", 1), days=(day,))


def post(model: LinearModel) -> None:
    """Charge each session without a main lift."""
    due = owed(model.resolved)
    for group in model.groups:
        if group.days[0] in due:
            day = model.resolved.days[group.days[0]]
            found = model.count(lambda e, d=day: model.resolved.builds(e, d), group.index)
            missing = model.violation("main-lift", len(group.days), model.resolved.cost("main-lift"))
            model.at_least_a_day("main-lift", combined(found, {missing: 1}), 1, group.index)


RULE = Rule(
    id="main-lift",
    kind="scored",
    sentence="Each session should have a main lift: a high-fatigue multi-joint lift that is the first choice of its movement (not in efficiency).",
    remedy="build the session around one free-weight lift",
    post=post,
    check=check,
    says="{day} has no main lift",
)
