"""Days of direct work that the brief asks for."""

from __future__ import annotations

from collections.abc import Iterator

from setwright.solver.evaluation.evaluated_week import EvaluatedWeek
from setwright.solver.evaluation.finding import Finding, Rule


def check(evaluated: EvaluatedWeek) -> Iterator[Finding]:
    for muscle in evaluated.resolved.muscles.values():
        if evaluated.direct_days(muscle.id) < muscle.days_at_least:
            text = f"{muscle.id} has direct work on {evaluated.direct_days(muscle.id)} days, not {muscle.days_at_least}"
            yield Finding("days-at-least", text)


RULE = Rule(
    id="days-at-least",
    kind="hard",
    sentence="A muscle gets direct work on at least the days the brief says.",
    remedy="ask for fewer days, or add a day",
    check=check,
)
