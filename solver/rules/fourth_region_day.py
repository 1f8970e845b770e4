"""A region on a fourth day."""

from __future__ import annotations

from collections.abc import Iterator

from setwright.solver.evaluation.evaluated_week import EvaluatedWeek
from setwright.solver.evaluation.finding import Finding, Rule
from setwright.solver.rules.full_session import REGIONS


def check(evaluated: EvaluatedWeek) -> Iterator[Finding]:
    if len(evaluated.resolved.days) < evaluated.resolved.limit("theme", "least-days"):
        return
    most = round(evaluated.resolved.limit("fourth-region-day", "days"))
    for region in REGIONS:
        over = len(evaluated.region_days(region)) - most
        if over > 0:
            text = f"{region} stands on {most + over} days"
            yield Finding("fourth-region-day", text, evaluated.resolved.penalty("fourth-region-day", over))


RULE = Rule(
    id="fourth-region-day",
    kind="scored",
    sentence="In weeks of 4 days or more a region on a fourth day or more costs.",
    remedy="gather the region's lifts on three days",
    check=check,
)
