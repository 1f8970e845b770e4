"""A region on two consecutive days."""

from __future__ import annotations

from collections.abc import Iterator

from setwright.solver.evaluation.evaluated_week import EvaluatedWeek
from setwright.solver.evaluation.finding import Finding, Rule
from setwright.solver.rules.full_session import REGIONS


def check(evaluated: EvaluatedWeek) -> Iterator[Finding]:
    if len(evaluated.resolved.days) < evaluated.resolved.limit("theme", "least-days"):
        return
    for region in REGIONS:
        days = evaluated.region_days(region)
        runs = sum(1 for i, j in evaluated.resolved.adjacent if i in days and j in days)
        if runs:
            text = f"{region} stands on consecutive days"
            yield Finding("region-consecutive", text, evaluated.resolved.penalty("region-consecutive", runs))


RULE = Rule(
    id="region-consecutive",
    kind="scored",
    sentence="In weeks of 4 days or more a region on two consecutive days costs.",
    remedy="move one of its days",
    check=check,
)
