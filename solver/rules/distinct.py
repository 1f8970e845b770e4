"""A different exercise to learn."""

from __future__ import annotations

from collections.abc import Iterator

from setwright.solver.evaluation.evaluated_week import EvaluatedWeek
from setwright.solver.evaluation.finding import Finding, Rule


def check(evaluated: EvaluatedWeek) -> Iterator[Finding]:
    if evaluated.days_of:
        count = len(evaluated.days_of)
        yield Finding("distinct", f"{count} different exercises", evaluated.resolved.penalty("distinct", count))


RULE = Rule(
    id="distinct",
    kind="scored",
    sentence="Each different exercise of a week costs a little.",
    remedy="repeat an exercise on another day",
    check=check,
)
