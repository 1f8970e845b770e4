"""General warm-up given up."""

from __future__ import annotations

from collections.abc import Iterator

from setwright.solver.evaluation.evaluated_week import EvaluatedWeek
from setwright.solver.evaluation.finding import Finding, Rule


def check(evaluated: EvaluatedWeek) -> Iterator[Finding]:
    for day, lines in zip(evaluated.resolved.days, evaluated.on, strict=True):
        given = day.warm_up - evaluated.warm_up(day.index)
        if lines and given > 0:
            text = f"{day.name} gives up {given} s of its warm-up"
            yield Finding("warm-up-given", text, evaluated.resolved.penalty("warm-up-given", given))


RULE = Rule(
    id="warm-up-given",
    kind="scored",
    sentence="Each second of general warm-up that a full day gives up costs.",
    remedy="cut a set",
    check=check,
)
