"""An exercise or a piece of kit the client dislikes."""

from __future__ import annotations

from collections.abc import Iterator

from setwright.catalogue.entries import Exercise
from setwright.solver.evaluation.finding import Finding, Rule
from setwright.solver.evaluation.resolved_brief import DayTerms, Terms
from setwright.solver.evaluation.evaluated_week import View


def applies(terms: Terms, exercise: Exercise, sets: int, day: DayTerms) -> bool:
    """Whether a line of so many sets pays this cost."""
    return exercise.id in terms.brief.dislike or any(item in terms.brief.dislike for item in exercise.needs)


def check(view: View) -> Iterator[Finding]:
    for line in view.lines:
        if applies(view.terms, line.exercise, line.sets, line.day):
            yield Finding("disliked", f"{line.where} is disliked", view.terms.charge("disliked", 1))


RULE = Rule(
    id="disliked",
    kind="scored",
    sentence="A disliked exercise, or one on disliked kit, costs.",
    remedy="swap it",
    check=check,
)
