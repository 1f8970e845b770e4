"""The order inside a day."""

from __future__ import annotations

from collections.abc import Iterator

from setwright.solver.evaluation.evaluated_week import EvaluatedWeek
from setwright.solver.evaluation.finding import Finding
from setwright.solver.evaluation.order import in_order
from setwright.solver.linear.rule import Rule, held_by_decoding


def check(evaluated: EvaluatedWeek) -> Iterator[Finding]:
    """A finding for each day whose lines are not in the order they should be done."""
    for day in evaluated.resolved.days:
        lines = evaluated.on[day.index]
        due = tuple(e.id for e in in_order(evaluated.resolved, [(x.exercise, x.entry.partner) for x in lines]))
        if tuple(x.exercise.id for x in lines) != due:
            yield Finding("order", days=(day.index,), others=due)


RULE = Rule(
    id="order",
    kind="data",
    scope="planned weeks",
    sentence="In a day priority lifts come first, multi-joint lifts before single-joint lifts and trunk work last; paired exercises stand together.",
    remedy="sort the day",
    post=held_by_decoding,
    check=check,
    says="{day} is not in order; the order is {others}",
)
