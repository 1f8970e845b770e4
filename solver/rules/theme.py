"""A fee for each region in a day of a longer week."""

from __future__ import annotations

from collections.abc import Iterator

from setwright.solver.evaluation.evaluated_week import EvaluatedWeek
from setwright.solver.evaluation.finding import Finding, Rule
from setwright.solver.rules.full_session import REGIONS


def check(evaluated: EvaluatedWeek) -> Iterator[Finding]:
    if len(evaluated.resolved.days) < evaluated.resolved.limit("theme", "least-days"):
        return
    for region in REGIONS:
        days = len(evaluated.region_days(region))
        if days:
            yield Finding("theme", f"{region} stands on {days} days", evaluated.resolved.penalty("theme", days))


RULE = Rule(
    id="theme",
    kind="scored",
    sentence="In weeks of 4 days or more each region in a day costs, so that days have a theme.",
    remedy="gather a region's lifts on fewer days",
    check=check,
)
