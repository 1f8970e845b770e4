"""No idle day in efficiency."""

from __future__ import annotations

from collections.abc import Iterator

from setwright.solver.evaluation.finding import Finding, Rule
from setwright.solver.evaluation.evaluated_week import View


def check(view: View) -> Iterator[Finding]:
    terms = view.terms
    if terms.goal != "efficiency":
        return
    share = terms.limit("day-share")
    used = sum(view.seconds(d.index) for d in terms.days)
    whole = sum(d.minutes for d in terms.days)
    for day in terms.days:
        due = share * used * day.minutes / whole
        if view.seconds(day.index) < due:
            yield Finding("day-share", f"{day.name} takes {view.seconds(day.index)} s, its part is {due:.0f} s")


RULE = Rule(
    id="day-share",
    kind="hard",
    sentence="In efficiency no day takes less than 80 % of its part of the minutes used.",
    remedy="move sets from the longest day",
    check=check,
)
