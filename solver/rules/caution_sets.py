"""The most sets of an exercise that a caution or an age allows."""

from __future__ import annotations

from collections.abc import Iterator

from setwright.solver.evaluation.evaluated_week import EvaluatedWeek
from setwright.solver.evaluation.finding import Finding
from setwright.solver.linear.rule import Rule, held_by_columns


def check(evaluated: EvaluatedWeek) -> Iterator[Finding]:
    """A finding for each line with more sets than the client's cautions and age allow."""
    most = evaluated.resolved.client_limits.sets_most
    for line in evaluated.lines:
        if most is not None and line.sets > most:
            days = (line.day.index,)
            yield Finding("caution-sets", amount=line.sets, limit=most, days=days, exercise=line.exercise.id)


RULE = Rule(
    id="caution-sets",
    kind="hard",
    sentence="An exercise has at most as many sets in a day as the client's cautions allow.",
    remedy="cut sets, or have a professional set the limits",
    post=held_by_columns,
    check=check,
    says="{day}: {exercise} has {sets}, the client has at most {limit}",
)
