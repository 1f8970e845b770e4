"""A line on the card."""

from __future__ import annotations

from collections.abc import Iterator

from setwright.solver.evaluation.evaluated_week import EvaluatedWeek
from setwright.solver.evaluation.finding import Finding, Rule


def check(evaluated: EvaluatedWeek) -> Iterator[Finding]:
    if evaluated.lines:
        yield Finding("line", f"{len(evaluated.lines)} lines", evaluated.resolved.penalty("line", len(evaluated.lines)))


RULE = Rule(
    id="line",
    kind="scored",
    sentence="Each line on a card costs a little.",
    remedy="do more sets of fewer exercises",
    check=check,
)
