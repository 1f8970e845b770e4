"""Repetitions in reserve that a caution or an age asks for."""

from __future__ import annotations

from collections.abc import Iterator

from setwright.solver.evaluation.evaluated_week import EvaluatedWeek
from setwright.solver.evaluation.finding import Finding
from setwright.solver.linear.rule import Rule, held_by_columns


def check(evaluated: EvaluatedWeek) -> Iterator[Finding]:
    """A finding for each line that stops nearer to failure than the client's cautions and age allow."""
    least = evaluated.resolved.client_limits.rir_least
    for line in evaluated.lines:
        if line.entry.rir < least:
            days = (line.day.index,)
            yield Finding("caution-effort", amount=line.entry.rir, limit=least, days=days, exercise=line.exercise.id)


RULE = Rule(
    id="caution-effort",
    kind="hard",
    sentence="Every set keeps at least the repetitions in reserve that the client's cautions and age ask for.",
    remedy="stop the set earlier, or have a professional set the limits",
    post=held_by_columns,
    check=check,
    says="{day}: {exercise} has {amount} RIR, the client needs at least {limit}",
)
