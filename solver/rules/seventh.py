"""A seventh exercise on a short day."""

from __future__ import annotations

from collections.abc import Iterator

from setwright.solver.evaluation.evaluated_week import EvaluatedWeek
from setwright.solver.evaluation.finding import Finding, Rule


def check(evaluated: EvaluatedWeek) -> Iterator[Finding]:
    most = round(evaluated.resolved.limit("seventh", "exercises"))
    for day, lines in zip(evaluated.resolved.days, evaluated.on, strict=True):
        over = len(lines) - most
        if over > 0 and day.minutes <= evaluated.resolved.limit("seventh", "minutes"):
            text = f"{day.name} has {len(lines)} exercises in {day.minutes} minutes"
            yield Finding("seventh", text, evaluated.resolved.penalty("seventh", over))


RULE = Rule(
    id="seventh",
    kind="scored",
    sentence="A seventh exercise on a day of up to 30 minutes costs.",
    remedy="do more sets of fewer exercises",
    check=check,
)
