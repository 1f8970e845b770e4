"""A stand-in is taken only where the kit has nothing better."""

from __future__ import annotations

from setwright.catalogue.entries import Exercise
from setwright.solver.evaluation.answered_once import answered_once
from setwright.solver.evaluation.resolved_brief import STAND_IN, ResolvedBrief
from setwright.solver.evaluation.resolved_day import ResolvedDay
from setwright.solver.linear.rule import Rule, held_by_columns

ONLY_NAMED = 5
"""The rank of exercises that are taken only when the brief names them."""


def excludes(resolved: ResolvedBrief, exercise: Exercise, day: ResolvedDay) -> bool:
    """Whether something better of the exercise's slot is open, or a name is asked for that the brief does not say."""
    if exercise.id in resolved.pinned:
        return False
    rank = resolved.rank(exercise, day)
    if rank >= ONLY_NAMED:
        return exercise.id not in resolved.named
    if rank < STAND_IN:
        return False
    return any(
        resolved.rank(other, day) < rank and available(resolved, other, day)
        for other in of_slots(resolved)[exercise.slot.id]
    )


@answered_once
def of_slots(resolved: ResolvedBrief) -> dict[str, list[Exercise]]:
    """Each slot's exercises, by the slot's id, in the catalogue's order."""
    found: dict[str, list[Exercise]] = {}
    for exercise in resolved.catalogue.exercises.values():
        found.setdefault(exercise.slot.id, []).append(exercise)
    return found


def closed_as_stand_in(resolved: ResolvedBrief, exercise: Exercise, day: ResolvedDay) -> bool:
    """Whether this rule alone closes an exercise on the day."""
    return resolved.excluded_by(exercise, day) == (RULE.id,)


def available(resolved: ResolvedBrief, exercise: Exercise, day: ResolvedDay) -> bool:
    """Whether every other rule leaves an exercise open on the day."""
    return resolved.open_but_for(RULE.id, exercise, day)


RULE = Rule(
    id="stand-in",
    kind="hard",
    scope="planned weeks",
    sentence="An exercise of rank 3 or 4 is used only when no better one of its slot is available, one of rank 5 only when the brief names it.",
    remedy="take the better exercise of the slot, or pin the stand-in by name",
    post=held_by_columns,
    excludes=excludes,
)
