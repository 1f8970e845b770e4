"""A region on two consecutive days."""

from __future__ import annotations

from collections.abc import Iterator

from setwright.solver.evaluation.finding import Finding, Rule
from setwright.solver.rules.full_session import REGIONS
from setwright.solver.evaluation.evaluated_week import View


def check(view: View) -> Iterator[Finding]:
    if len(view.terms.days) < view.terms.limit("theme", "least-days"):
        return
    for region in REGIONS:
        days = view.region_days(region)
        runs = sum(1 for i, j in view.terms.adjacent if i in days and j in days)
        if runs:
            text = f"{region} stands on consecutive days"
            yield Finding("region-consecutive", text, view.terms.charge("region-consecutive", runs))


RULE = Rule(
    id="region-consecutive",
    kind="scored",
    sentence="In weeks of 4 days or more a region on two consecutive days costs.",
    remedy="move one of its days",
    check=check,
)
