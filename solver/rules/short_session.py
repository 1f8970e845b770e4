"""A session of few lifts on a day that has time for more: a trip to the gym for one lift."""

from __future__ import annotations

from collections.abc import Iterator

from setwright.solver.evaluation.evaluated_week import EvaluatedWeek
from setwright.solver.evaluation.finding import Finding
from setwright.solver.evaluation.resolved_brief import ResolvedBrief
from setwright.solver.evaluation.resolved_day import ResolvedDay
from setwright.solver.linear.linear_model import LinearModel, combined, scaled
from setwright.solver.linear.region_days import trained_days
from setwright.solver.linear.rule import Rule


def roomy(resolved: ResolvedBrief, day: ResolvedDay) -> bool:
    """Whether a day is long enough for a session of several lifts."""
    return day.minutes >= resolved.limit("short-session", "from-minutes")


def check(evaluated: EvaluatedWeek) -> Iterator[Finding]:
    """A finding for each roomy day that is used for too few lifts; a day off has none."""
    resolved = evaluated.resolved
    fewest = round(resolved.limit("short-session", "lifts"))
    for day in resolved.days:
        lifts = len(evaluated.on[day.index])
        if roomy(resolved, day) and 0 < lifts < fewest:
            cost = resolved.penalty("short-session", fewest - lifts)
            yield Finding("short-session", cost, days=(day.index,), amount=lifts, limit=fewest)


def post(model: LinearModel) -> None:
    """Charge each lift that the used days of a group lack."""
    resolved = model.resolved
    fewest = round(resolved.limit("short-session", "lifts"))
    for group in model.groups:
        lifts = model.count(lambda e: True, group.index)
        if lifts and roomy(resolved, model.day(group.index)):
            used = trained_days(model, lifts, group.index)
            missing = model.violation("short-session", (fewest - 1) * len(group.days), resolved.cost("short-session"))
            lacking = combined(lifts, scaled(used, -fewest), {missing: 1})
            model.constrain("short-session", lacking, low=0)


RULE = Rule(
    id="short-session",
    kind="scored",
    sentence="A day of {from_minutes:g} minutes or more has at least {lifts:g} lifts, or is left free.",
    remedy="leave the day free, or give it more lifts",
    post=post,
    check=check,
    says="{day} has {amount} of at least {limit} lifts",
)
