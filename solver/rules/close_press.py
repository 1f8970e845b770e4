"""A close-grip press where a flat or an incline press would be the main press."""

from __future__ import annotations

from setwright.catalogue.entries import Exercise
from setwright.solver.evaluation.resolved_brief import ResolvedBrief
from setwright.solver.evaluation.resolved_day import ResolvedDay
from setwright.solver.linear.rule import Rule, held_by_columns
from setwright.solver.rules.stand_in import ONLY_NAMED, available, of_slots

BETTER = ("flat-press", "incline-press", "dip")
"""Slots whose exercises come before a close-grip press."""


def excludes(resolved: ResolvedBrief, exercise: Exercise, day: ResolvedDay) -> bool:
    """Whether an exercise is a close-grip press that nobody asked for and a better press is open."""
    if exercise.slot.id != "close-press" or exercise.id in resolved.named:
        return False
    if "triceps" in resolved.priorities and resolved.experience != "novice":
        return False
    return any(
        other.rank < ONLY_NAMED and available(resolved, other, day)
        for slot in BETTER
        for other in of_slots(resolved).get(slot, ())
    )


RULE = Rule(
    id="close-press",
    kind="hard",
    scope="planned weeks",
    sentence="A close-grip press is used only when no flat press, incline press or dip is available, when triceps are a priority (not for a novice), or when the brief names it.",
    remedy="take a flat or incline press, make triceps a priority, or name it",
    post=held_by_columns,
    excludes=excludes,
)
