"""A multi-joint lift of two sets."""

from __future__ import annotations

from collections.abc import Iterator

from setwright.catalogue.entries import Exercise
from setwright.solver.evaluation.finding import Finding, Rule, some_sets
from setwright.solver.evaluation.resolved_brief import DayTerms, Terms
from setwright.solver.evaluation.evaluated_week import View


def applies(terms: Terms, exercise: Exercise, sets: int, day: DayTerms) -> bool:
    """Whether a line of so many sets pays this cost."""
    return (
        exercise.multi_joint
        and sets < terms.limit("token-sets", "sets")
        and terms.goal != "efficiency"
        and len(terms.days) > 1
        and not terms.minimum_dose
    )


def check(view: View) -> Iterator[Finding]:
    for line in view.lines:
        if applies(view.terms, line.exercise, line.sets, line.day):
            yield Finding("token-sets", f"{line.where} has {some_sets(line.sets)}", view.terms.charge("token-sets", 1))


RULE = Rule(
    id="token-sets",
    kind="scored",
    sentence="A multi-joint lift of fewer than 3 sets costs, outside efficiency, one-day weeks and a minimum dose.",
    remedy="give the lift a third set",
    check=check,
)
