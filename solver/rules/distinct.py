"""A different exercise to learn."""

from __future__ import annotations

from collections.abc import Iterator

from setwright.solver.evaluation.finding import Finding, Rule
from setwright.solver.evaluation.evaluated_week import View


def check(view: View) -> Iterator[Finding]:
    if view.days_of:
        count = len(view.days_of)
        yield Finding("distinct", f"{count} different exercises", view.terms.charge("distinct", count))


RULE = Rule(
    id="distinct",
    kind="scored",
    sentence="Each different exercise of a week costs a little.",
    remedy="repeat an exercise on another day",
    check=check,
)
