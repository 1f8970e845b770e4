"""A close-grip press where a flat or an incline press would be the main press."""

from __future__ import annotations

from setwright.catalogue.entries import Exercise
from setwright.solver.evaluation.finding import Rule
from setwright.solver.rules.stand_in import available
from setwright.solver.evaluation.resolved_brief import DayTerms, Terms

BETTER = ("flat-press", "incline-press", "dip")


def closes(terms: Terms, exercise: Exercise, day: DayTerms) -> bool:
    if exercise.slot.id != "close-press" or exercise.id in terms.named:
        return False
    if "triceps" in terms.priorities and terms.experience != "novice":
        return False
    return any(
        other.slot.id in BETTER and other.rank < 5 and available(terms, other, day)
        for other in terms.catalogue.exercises.values()
    )


RULE = Rule(
    id="close-press",
    kind="hard",
    sentence="A close-grip press is taken only where no flat or incline press or dip is open, for a triceps priority (not a novice's), or when named.",
    remedy="take a flat or incline press, make triceps a priority, or name it",
    closes=closes,
)
