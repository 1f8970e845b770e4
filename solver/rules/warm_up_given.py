"""General warm-up given up."""

from __future__ import annotations

from collections.abc import Iterator

from setwright.solver.evaluation.finding import Finding, Rule
from setwright.solver.evaluation.evaluated_week import View


def check(view: View) -> Iterator[Finding]:
    for day, lines in zip(view.terms.days, view.on, strict=True):
        given = day.warm_up - view.warm_up(day.index)
        if lines and given > 0:
            text = f"{day.name} gives up {given} s of its warm-up"
            yield Finding("warm-up-given", text, view.terms.charge("warm-up-given", given))


RULE = Rule(
    id="warm-up-given",
    kind="scored",
    sentence="Each second of general warm-up that a full day gives up costs.",
    remedy="cut a set",
    check=check,
)
