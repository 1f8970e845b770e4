"""A session of a short week without push, pull or lower work."""

from __future__ import annotations

from collections.abc import Iterator

from setwright.solver.evaluation.evaluated_week import EvaluatedWeek
from setwright.solver.evaluation.finding import Finding, Rule
from setwright.solver.evaluation.resolved_brief import ResolvedBrief, ResolvedDay

REGIONS = ("push", "pull", "lower")


def owed(resolved: ResolvedBrief) -> tuple[tuple[ResolvedDay, str], ...]:
    """The (day, region) that should have a multi-joint lift."""
    if not resolved.full_body:
        return ()
    return tuple(
        (day, region)
        for day in resolved.days
        if day.focus is None
        for region in REGIONS
        if wanted(resolved, region) and resolved.can(day, lambda e, r=region: e.multi_joint and e.region == r)  # type: ignore[misc]
    )


def wanted(resolved: ResolvedBrief, region: str) -> bool:
    """Whether any muscle that the region's lifts train directly is sought."""
    lifts = (e for e in resolved.catalogue.exercises.values() if e.multi_joint and e.region == region)
    return any(resolved.sought(m) for e in lifts for m in e.direct)


def check(evaluated: EvaluatedWeek) -> Iterator[Finding]:
    for day, region in owed(evaluated.resolved):
        if day.index not in evaluated.region_days(region):
            text = f"{day.name} has no multi-joint {region} lift"
            yield Finding("full-session", text, evaluated.resolved.penalty("full-session", 1))


RULE = Rule(
    id="full-session",
    kind="scored",
    sentence="In weeks of up to 3 days each session without a focus has a push, a pull and a lower lift.",
    remedy="give the session one lift of the region",
    check=check,
)
