"""A region on fewer than two days of a longer week."""

from __future__ import annotations

from collections.abc import Iterator

from setwright.solver.evaluation.finding import Finding, Rule
from setwright.solver.rules.full_session import REGIONS, wanted
from setwright.solver.evaluation.resolved_brief import Terms
from setwright.solver.evaluation.evaluated_week import View


def possible(terms: Terms, region: str) -> int:
    """On how many days the region could have a multi-joint lift."""
    return sum(1 for d in terms.days if terms.can(d, lambda e: e.multi_joint and e.region == region))


def check(view: View) -> Iterator[Finding]:
    if len(view.terms.days) < view.terms.limit("region-days", "least-days"):
        return
    for region in REGIONS:
        if wanted(view.terms, region) and possible(view.terms, region) > 1:
            short = 2 - len(view.region_days(region))
            if short > 0:
                text = f"{region} stands on {2 - short} days"
                yield Finding("region-days", text, view.terms.charge("region-days", short))


RULE = Rule(
    id="region-days",
    kind="scored",
    sentence="In weeks of 4 days or more each region stands on at least 2 days.",
    remedy="give the region a second day",
    check=check,
)
