"""The order inside a day."""

from __future__ import annotations

from collections.abc import Iterator

from setwright.solver.evaluation.evaluated_week import EvaluatedWeek
from setwright.solver.evaluation.finding import Finding, Rule
from setwright.solver.evaluation.order import in_order


def check(evaluated: EvaluatedWeek) -> Iterator[Finding]:
    for day in evaluated.resolved.days:
        lines = evaluated.on[day.index]
        due = in_order(evaluated.resolved, [(x.exercise, x.entry.partner) for x in lines])
        if [x.exercise.id for x in lines] != [e.id for e in due]:
            yield Finding("order", f"{day.name} is not in order: {', '.join(e.name for e in due)}")


RULE = Rule(
    id="order",
    kind="data",
    sentence="Priority lifts come first, multi-joint before single-joint lifts, trunk work last; paired lifts stand together.",
    remedy="sort the day",
    check=check,
)
