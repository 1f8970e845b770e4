"""A second choice where the kit has a first."""

from __future__ import annotations

from collections.abc import Iterator

from setwright.catalogue.entries import Exercise
from setwright.solver.evaluation.finding import Finding, Rule
from setwright.solver.evaluation.resolved_brief import DayTerms, Terms
from setwright.solver.evaluation.evaluated_week import View


def applies(terms: Terms, exercise: Exercise, sets: int, day: DayTerms) -> bool:
    """Whether a line of so many sets pays this cost."""
    return terms.second_choice(exercise, day)


def check(view: View) -> Iterator[Finding]:
    for line in view.lines:
        if applies(view.terms, line.exercise, line.sets, line.day):
            yield Finding("second-choice", f"{line.where} is a second choice", view.terms.charge("second-choice", 1))


RULE = Rule(
    id="second-choice",
    kind="scored",
    sentence="An exercise of lower rank than another of its movement at hand costs.",
    remedy="take the first choice of the movement",
    check=check,
)
