"""Repetitions in reserve that the brief asks for."""

from __future__ import annotations

from collections.abc import Iterator

from setwright.solver.evaluation.evaluated_week import EvaluatedWeek
from setwright.solver.evaluation.finding import Finding
from setwright.solver.linear.rule import Rule, held_by_columns


def check(evaluated: EvaluatedWeek) -> Iterator[Finding]:
    """A finding for each line that stops nearer to failure than the brief asks."""
    least = evaluated.resolved.reserve_asked
    for line in evaluated.lines:
        if line.entry.rir < least:
            days = (line.day.index,)
            yield Finding("reserve-asked", amount=line.entry.rir, limit=least, days=days, exercise=line.exercise.id)


RULE = Rule(
    id="reserve-asked",
    kind="hard",
    sentence="Every set keeps at least the repetitions in reserve that the brief asks for.",
    remedy="stop the set earlier, or drop rir_at_least",
    post=held_by_columns,
    check=check,
    says="{day}: {exercise} has {amount} RIR, the brief asks for at least {limit}",
)
