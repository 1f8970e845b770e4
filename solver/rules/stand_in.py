"""A stand-in is taken where the kit has something better."""

from __future__ import annotations

from setwright.catalogue.entries import Exercise
from setwright.solver.evaluation.finding import Rule
from setwright.solver.evaluation.resolved_brief import ResolvedBrief, ResolvedDay


def excludes(resolved: ResolvedBrief, exercise: Exercise, day: ResolvedDay) -> bool:
    if exercise.id in resolved.pinned:
        return False
    rank = resolved.rank(exercise, day)
    if rank >= 5:
        return exercise.id not in resolved.named
    if rank <= 2:
        return False
    return any(
        other.slot == exercise.slot and resolved.rank(other, day) < rank and available(resolved, other, day)
        for other in resolved.catalogue.exercises.values()
    )


def available(resolved: ResolvedBrief, exercise: Exercise, day: ResolvedDay) -> bool:
    """Whether every other rule leaves an exercise open on the day."""
    from setwright.solver.rules import EXCLUDERS

    return not any(
        rule.excludes(resolved, exercise, day)
        for rule in EXCLUDERS
        if rule.id != RULE.id and rule.excludes and not resolved.off(rule.id)
    )


RULE = Rule(
    id="stand-in",
    kind="hard",
    sentence="A stand-in (rank 3 or 4) is taken only where nothing better of its slot is open, one of rank 5 only when named.",
    remedy="take the better exercise of the slot, or pin the stand-in by name",
    excludes=excludes,
)
