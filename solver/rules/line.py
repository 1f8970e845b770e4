"""A line on the card."""

from __future__ import annotations

from collections.abc import Iterator

from setwright.solver.evaluation.finding import Finding, Rule
from setwright.solver.evaluation.evaluated_week import View


def check(view: View) -> Iterator[Finding]:
    if view.lines:
        yield Finding("line", f"{len(view.lines)} lines", view.terms.charge("line", len(view.lines)))


RULE = Rule(
    id="line",
    kind="scored",
    sentence="Each line on a card costs a little.",
    remedy="do more sets of fewer exercises",
    check=check,
)
