"""Repetitions as the exercise and the loads at hand set them."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final

from setwright.solver.evaluation.evaluated_week import EvaluatedWeek
from setwright.solver.evaluation.finding import Finding
from setwright.solver.evaluation.prescriptions import reps_of
from setwright.solver.linear.rule import Rule, held_by_columns

NEAR: Final = 2
"""Repetitions beyond a range that make no difference worth a word (convention)."""


def check(evaluated: EvaluatedWeek) -> Iterator[Finding]:
    """A finding for each line with another range of repetitions than its own; see also caution-repetitions."""
    least = evaluated.resolved.client_limits.reps_least
    for line in evaluated.lines:
        due = reps_of(evaluated.resolved, line.exercise, line.day)
        told = not line.exercise.timed and line.entry.reps[0] < least
        if line.entry.reps != due and not told:
            yield Finding(
                "repetitions", amount=line.entry.reps, limit=due, days=(line.day.index,), exercise=line.exercise.id
            )


def about_the_same(evaluated: EvaluatedWeek, finding: Finding) -> bool:
    """Whether a line's repetitions lie inside the exercise's range, two more or fewer allowed (convention)."""
    said, due = finding.amount, finding.limit
    if not (isinstance(said, tuple) and isinstance(due, tuple)):
        return False
    return due[0] - NEAR <= said[0] and said[1] <= due[1] + NEAR


RULE = Rule(
    id="repetitions",
    kind="data",
    scope="planned weeks",
    sentence="The repetitions printed are the exercise's range, moved for a novice, by the client's wish or because loads are light.",
    remedy="print the range of the exercise",
    post=held_by_columns,
    check=check,
    negligible=about_the_same,
    says="{day}: {exercise} has {amount_span} repetitions, not {limit_span}",
)
