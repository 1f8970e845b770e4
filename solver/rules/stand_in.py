"""A stand-in is taken where the kit has something better."""

from __future__ import annotations

from setwright.catalogue.entries import Exercise
from setwright.solver.evaluation.finding import Rule
from setwright.solver.evaluation.resolved_brief import DayTerms, Terms


def closes(terms: Terms, exercise: Exercise, day: DayTerms) -> bool:
    if exercise.id in terms.pinned:
        return False
    rank = terms.rank(exercise, day)
    if rank >= 5:
        return exercise.id not in terms.named
    if rank <= 2:
        return False
    return any(
        other.slot == exercise.slot and terms.rank(other, day) < rank and available(terms, other, day)
        for other in terms.catalogue.exercises.values()
    )


def available(terms: Terms, exercise: Exercise, day: DayTerms) -> bool:
    """Whether every other rule leaves an exercise open on the day."""
    from setwright.solver.rules import CLOSERS

    return not any(
        rule.closes(terms, exercise, day)
        for rule in CLOSERS
        if rule.id != RULE.id and rule.closes and not terms.off(rule.id)
    )


RULE = Rule(
    id="stand-in",
    kind="hard",
    sentence="A stand-in (rank 3 or 4) is taken only where nothing better of its slot is open, one of rank 5 only when named.",
    remedy="take the better exercise of the slot, or pin the stand-in by name",
    closes=closes,
)
