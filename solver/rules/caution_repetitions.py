"""The fewest repetitions that a caution or an age asks for, so that no load is too heavy."""

from __future__ import annotations

from collections.abc import Iterator

from setwright.solver.evaluation.evaluated_week import EvaluatedWeek
from setwright.solver.evaluation.finding import Finding
from setwright.solver.linear.rule import Rule, held_by_columns


def check(evaluated: EvaluatedWeek) -> Iterator[Finding]:
    """A finding for each line whose range begins below what the client's cautions and age ask for; holds are left aside."""
    least = evaluated.resolved.client_limits.reps_least
    for line in evaluated.lines:
        low = line.entry.reps[0]
        if low < least and not line.exercise.timed:
            days = (line.day.index,)
            yield Finding("caution-repetitions", amount=low, limit=least, days=days, exercise=line.exercise.id)


RULE = Rule(
    id="caution-repetitions",
    kind="hard",
    sentence="Every range of repetitions begins at the number that the client's cautions and age ask for or above, so that loads stay moderate.",
    remedy="take a lighter load for more repetitions, or have a professional set the limits",
    post=held_by_columns,
    check=check,
    says="{day}: {exercise} begins at {amount} repetitions, the client has at least {limit}",
)
