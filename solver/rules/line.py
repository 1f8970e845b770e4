"""A line on the card."""

from __future__ import annotations

from collections.abc import Iterator

from setwright.solver.evaluation.evaluated_week import EvaluatedWeek
from setwright.solver.evaluation.finding import Finding
from setwright.solver.linear.linear_model import LinearModel
from setwright.solver.linear.rule import Rule


def check(evaluated: EvaluatedWeek) -> Iterator[Finding]:
    """One finding, with the number of lines; none for an empty week."""
    if evaluated.lines:
        count = len(evaluated.lines)
        yield Finding("line", evaluated.resolved.penalty("line", count), amount=count)


def post(model: LinearModel) -> None:
    """Charge each exercise of each column."""
    model.penalise("line", model.count(lambda e: True), model.resolved.cost("line"))


RULE = Rule(
    id="line",
    kind="scored",
    sentence="Each line on a card costs a little, so that cards stay short.",
    remedy="do more sets of fewer exercises",
    post=post,
    check=check,
    says="{amount} lines",
)
