"""An exercise for a muscle that is not to be trained."""

from __future__ import annotations

from setwright.catalogue.entries import Exercise
from setwright.solver.evaluation.finding import Rule
from setwright.solver.evaluation.resolved_brief import DayTerms, Terms


def closes(terms: Terms, exercise: Exercise, day: DayTerms) -> bool:
    sole = terms.own_muscle(exercise)
    return sole is not None and terms.muscles[sole].emphasis == "none" and exercise.id not in terms.pinned


RULE = Rule(
    id="muscle-none",
    kind="hard",
    sentence="An exercise whose only direct muscle is at none stands nowhere.",
    remedy="give the muscle another emphasis, or drop the exercise",
    closes=closes,
)
