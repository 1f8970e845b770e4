"""A lift that can pin someone who trains alone."""

from __future__ import annotations

from setwright.catalogue.entries import Exercise
from setwright.solver.evaluation.finding import Rule
from setwright.solver.evaluation.resolved_brief import ResolvedBrief, ResolvedDay


def excludes(resolved: ResolvedBrief, exercise: Exercise, day: ResolvedDay) -> bool:
    return exercise.can_pin and resolved.brief.client.trains_alone and "safeties" not in day.items


RULE = Rule(
    id="lone-lifter",
    kind="hard",
    sentence="Someone who trains alone gets a lift that can pin only with safeties.",
    remedy="set safeties, or take a swap that can be put down",
    excludes=excludes,
)
