"""48 hours between two hard days for a muscle."""

from __future__ import annotations

from collections.abc import Iterator

from setwright.solver.evaluation.evaluated_week import WHOLE, EvaluatedWeek
from setwright.solver.evaluation.finding import Finding, Rule


def hard(evaluated: EvaluatedWeek, muscle: str, day: int) -> bool:
    """Whether a day counts as hard for a muscle."""
    direct = evaluated.direct_day_sets(muscle, day) > WHOLE * evaluated.resolved.limit("hard-days")
    return direct or evaluated.day_sets(muscle, day) > WHOLE * evaluated.resolved.limit("hard-days", "fractional")


def check(evaluated: EvaluatedWeek) -> Iterator[Finding]:
    for earlier, later in evaluated.resolved.adjacent:
        for muscle in evaluated.resolved.muscles:
            if hard(evaluated, muscle, earlier) and hard(evaluated, muscle, later):
                days = f"{evaluated.resolved.days[earlier].name} and {evaluated.resolved.days[later].name}"
                yield Finding("hard-days", f"{muscle} is trained hard on {days}")


RULE = Rule(
    id="hard-days",
    kind="hard",
    sentence="Two consecutive days do not both give a muscle more than 4 direct or 6 fractional sets.",
    remedy="move its work a day, or cut one of the two",
    check=check,
)
