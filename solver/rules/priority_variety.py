"""A priority muscle with one exercise, or at one angle."""

from __future__ import annotations

from collections.abc import Iterator

from setwright.solver.evaluation.finding import Finding, Rule
from setwright.solver.evaluation.resolved_brief import Terms
from setwright.solver.evaluation.evaluated_week import WHOLE, View


def exercises_due(terms: Terms, muscle: str) -> int:
    """The exercises a priority muscle should have, as far as the kit allows."""
    possible = {e.id for day in terms.open_on for e in day if muscle in e.direct}
    return min(round(terms.limit("priority-variety", "exercises")), len(possible))


def slots_possible(terms: Terms, muscle: str) -> int:
    """How many angles the kit has for a muscle."""
    return len({e.slot.id for day in terms.open_on for e in day if muscle in e.direct})


def check(view: View) -> Iterator[Finding]:
    for muscle in view.terms.priorities:
        mine = [line for line in view.lines if muscle in line.exercise.direct]
        due = exercises_due(view.terms, muscle)
        short = due - len({line.exercise.id for line in mine})
        if short > 0:
            text = f"{muscle} has {due - short} of {due} exercises"
            yield Finding("priority-variety", text, view.terms.charge("priority-variety", short))
        sets = view.weekly_sets(muscle) / WHOLE
        many = sets > view.terms.limit("priority-variety", "sets") and slots_possible(view.terms, muscle) > 1
        if many and len({line.exercise.slot.id for line in mine}) < 2:
            yield Finding("priority-variety", f"{muscle} has one angle", view.terms.charge("priority-variety", 1))


RULE = Rule(
    id="priority-variety",
    kind="scored",
    sentence="A priority muscle has two exercises, at different angles once it passes 8 weekly sets.",
    remedy="give it a second exercise at another angle",
    check=check,
)
