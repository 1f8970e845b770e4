"""A region on fewer than two days of a longer week."""

from __future__ import annotations

from collections.abc import Iterator

from setwright.solver.evaluation.evaluated_week import EvaluatedWeek
from setwright.solver.evaluation.finding import Finding, Rule
from setwright.solver.evaluation.resolved_brief import ResolvedBrief
from setwright.solver.rules.full_session import REGIONS, wanted


def possible(resolved: ResolvedBrief, region: str) -> int:
    """On how many days the region could have a multi-joint lift."""
    return sum(1 for d in resolved.days if resolved.can(d, lambda e: e.multi_joint and e.region == region))


def check(evaluated: EvaluatedWeek) -> Iterator[Finding]:
    if len(evaluated.resolved.days) < evaluated.resolved.limit("region-days", "least-days"):
        return
    for region in REGIONS:
        if wanted(evaluated.resolved, region) and possible(evaluated.resolved, region) > 1:
            short = 2 - len(evaluated.region_days(region))
            if short > 0:
                text = f"{region} stands on {2 - short} days"
                yield Finding("region-days", text, evaluated.resolved.penalty("region-days", short))


RULE = Rule(
    id="region-days",
    kind="scored",
    sentence="In weeks of 4 days or more each region stands on at least 2 days.",
    remedy="give the region a second day",
    check=check,
)
