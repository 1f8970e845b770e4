"""An exercise or a piece of kit the client likes."""

from __future__ import annotations

from collections.abc import Iterator

from setwright.catalogue.entries import Exercise
from setwright.solver.evaluation.finding import Finding, Rule
from setwright.solver.evaluation.resolved_brief import DayTerms, Terms
from setwright.solver.evaluation.evaluated_week import View


def applies(terms: Terms, exercise: Exercise, sets: int, day: DayTerms) -> bool:
    """Whether a line of so many sets pays this cost."""
    return exercise.id in terms.brief.like or any(item in terms.brief.like for item in exercise.needs)


def check(view: View) -> Iterator[Finding]:
    for line in view.lines:
        if applies(view.terms, line.exercise, line.sets, line.day):
            yield Finding("liked", f"{line.where} is liked", -view.terms.charge("liked", 1))


RULE = Rule(
    id="liked",
    kind="scored",
    sentence="A liked exercise, or one on liked kit, earns a little.",
    remedy="take liked exercises where they serve",
    check=check,
)
