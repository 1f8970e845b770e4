"""Heavy spine loads on consecutive days."""

from __future__ import annotations

from collections.abc import Iterator

from setwright.solver.evaluation.evaluated_week import EvaluatedWeek
from setwright.solver.evaluation.finding import Finding, Rule


def check(evaluated: EvaluatedWeek) -> Iterator[Finding]:
    heavy = evaluated.resolved.limit("axial-consecutive", "axial")
    days = evaluated.days_with(lambda x: x.exercise.axial >= heavy)
    for earlier, later in evaluated.resolved.adjacent:
        if earlier in days and later in days:
            text = (
                f"{evaluated.resolved.days[earlier].name} and {evaluated.resolved.days[later].name} both load the spine"
            )
            yield Finding("axial-consecutive", text, evaluated.resolved.penalty("axial-consecutive", 1))


RULE = Rule(
    id="axial-consecutive",
    kind="scored",
    sentence="Lifts of axial load 2 or more on two consecutive days cost.",
    remedy="move the squat or the hinge a day",
    check=check,
)
