"""A session of a short week without push, pull or lower work."""

from __future__ import annotations

from collections.abc import Iterator

from setwright.solver.evaluation.answered_once import answered_once
from setwright.solver.evaluation.evaluated_week import EvaluatedWeek
from setwright.solver.evaluation.finding import Finding
from setwright.solver.evaluation.resolved_brief import ResolvedBrief
from setwright.solver.linear.columns import REGIONS
from setwright.solver.linear.linear_model import LinearModel, combined
from setwright.solver.linear.rule import Rule


def wanted(resolved: ResolvedBrief, region: str) -> bool:
    """Whether any muscle that the region's lifts train directly is sought."""
    lifts = (e for e in resolved.catalogue.exercises.values() if e.multi_joint and e.region == region)
    return any(resolved.sought(m) for e in lifts for m in e.direct)


@answered_once
def owed(resolved: ResolvedBrief) -> tuple[tuple[int, str], ...]:
    """The (day, region) that should have a multi-joint lift."""
    if not resolved.full_body:
        return ()
    return tuple(
        (day.index, region)
        for day in resolved.days
        if day.focus is None
        for region in REGIONS
        if wanted(resolved, region) and resolved.can(day, lambda e, r=region: e.multi_joint and e.region == r)
    )


def check(evaluated: EvaluatedWeek) -> Iterator[Finding]:
    """A finding for each session that lacks a region."""
    for day, region in owed(evaluated.resolved):
        if day not in evaluated.region_days(region):
            yield Finding("full-session", evaluated.resolved.penalty("full-session", 1), subject=region, days=(day,))


def post(model: LinearModel) -> None:
    """Charge each session that lacks a region."""
    due = owed(model.resolved)
    for group in model.groups:
        for region in REGIONS:
            if any(day in group.days and r == region for day, r in due):
                trained = model.regions.get((region, group.index), {})
                missing = model.violation("full-session", len(group.days), model.resolved.cost("full-session"))
                model.at_least_a_day("full-session", combined(trained, {missing: 1}), 1, group.index)


RULE = Rule(
    id="full-session",
    kind="scored",
    sentence="In weeks of up to {most_days:g} days each session without a focus should have a push, a pull and a lower-body lift.",
    remedy="give the session one lift of the region",
    post=post,
    check=check,
    says="{day} has no multi-joint {subject} lift",
)
