"""Drop sets and rest-pause sets that a caution or an age leaves out."""

from __future__ import annotations

from collections.abc import Iterator

from setwright.solver.evaluation.evaluated_week import EvaluatedWeek
from setwright.solver.evaluation.finding import Finding
from setwright.solver.linear.rule import Rule, held_by_columns


def check(evaluated: EvaluatedWeek) -> Iterator[Finding]:
    """A finding for each line that ends in a technique where the client's cautions and age allow none."""
    if not evaluated.resolved.client_limits.techniques_off:
        return
    for line in evaluated.lines:
        if line.entry.technique != "straight" or line.entry.drops:
            days = (line.day.index,)
            yield Finding("caution-technique", days=days, exercise=line.exercise.id)


RULE = Rule(
    id="caution-technique",
    kind="hard",
    sentence="No set is a drop set or rest-pause set where the client's cautions or age leave them out.",
    remedy="make it straight sets, or have a professional set the limits",
    post=held_by_columns,
    check=check,
    says="{day}: {exercise} ends in a drop set or rest-pause, which the client does not do",
)
