"""A priority muscle with one exercise, or at one angle."""

from __future__ import annotations

from collections.abc import Iterator

from setwright.solver.evaluation.evaluated_week import WHOLE, EvaluatedWeek
from setwright.solver.evaluation.finding import Finding, Rule
from setwright.solver.evaluation.resolved_brief import ResolvedBrief


def exercises_due(resolved: ResolvedBrief, muscle: str) -> int:
    """The exercises a priority muscle should have, as far as the kit allows."""
    possible = {e.id for day in resolved.open_on for e in day if muscle in e.direct}
    return min(round(resolved.limit("priority-variety", "exercises")), len(possible))


def slots_possible(resolved: ResolvedBrief, muscle: str) -> int:
    """How many angles the kit has for a muscle."""
    return len({e.slot.id for day in resolved.open_on for e in day if muscle in e.direct})


def check(evaluated: EvaluatedWeek) -> Iterator[Finding]:
    for muscle in evaluated.resolved.priorities:
        mine = [line for line in evaluated.lines if muscle in line.exercise.direct]
        due = exercises_due(evaluated.resolved, muscle)
        short = due - len({line.exercise.id for line in mine})
        if short > 0:
            text = f"{muscle} has {due - short} of {due} exercises"
            yield Finding("priority-variety", text, evaluated.resolved.penalty("priority-variety", short))
        sets = evaluated.weekly_sets(muscle) / WHOLE
        many = (
            sets > evaluated.resolved.limit("priority-variety", "sets")
            and slots_possible(evaluated.resolved, muscle) > 1
        )
        if many and len({line.exercise.slot.id for line in mine}) < 2:
            yield Finding(
                "priority-variety", f"{muscle} has one angle", evaluated.resolved.penalty("priority-variety", 1)
            )


RULE = Rule(
    id="priority-variety",
    kind="scored",
    sentence="A priority muscle has two exercises, at different angles once it passes 8 weekly sets.",
    remedy="give it a second exercise at another angle",
    check=check,
)
