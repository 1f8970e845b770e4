"""No idle day in efficiency."""

from __future__ import annotations

from collections.abc import Iterator

from setwright.solver.evaluation.evaluated_week import EvaluatedWeek
from setwright.solver.evaluation.finding import Finding, Rule


def check(evaluated: EvaluatedWeek) -> Iterator[Finding]:
    resolved = evaluated.resolved
    if resolved.goal != "efficiency":
        return
    share = resolved.limit("day-share")
    used = sum(evaluated.seconds(d.index) for d in resolved.days)
    whole = sum(d.minutes for d in resolved.days)
    for day in resolved.days:
        due = share * used * day.minutes / whole
        if evaluated.seconds(day.index) < due:
            yield Finding("day-share", f"{day.name} takes {evaluated.seconds(day.index)} s, its part is {due:.0f} s")


RULE = Rule(
    id="day-share",
    kind="hard",
    sentence="In efficiency no day takes less than 80 % of its part of the minutes used.",
    remedy="move sets from the longest day",
    check=check,
)
