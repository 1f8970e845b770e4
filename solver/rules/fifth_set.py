"""A lift of five sets."""

from __future__ import annotations

from collections.abc import Iterator

from setwright.catalogue.entries import Exercise
from setwright.solver.evaluation.finding import Finding, Rule
from setwright.solver.evaluation.resolved_brief import DayTerms, Terms
from setwright.solver.evaluation.evaluated_week import View


def applies(terms: Terms, exercise: Exercise, sets: int, day: DayTerms) -> bool:
    """Whether a line of so many sets pays this cost."""
    return sets >= 5


def check(view: View) -> Iterator[Finding]:
    for line in view.lines:
        if applies(view.terms, line.exercise, line.sets, line.day):
            yield Finding("fifth-set", f"{line.where} has {line.sets} sets", view.terms.charge("fifth-set", 1))


RULE = Rule(
    id="fifth-set",
    kind="scored",
    sentence="A fifth set of a lift costs.",
    remedy="spread its sets",
    check=check,
)
