"""An exercise that the client avoids."""

from __future__ import annotations

from setwright.catalogue.entries import Exercise
from setwright.solver.evaluation.finding import Rule
from setwright.solver.evaluation.resolved_brief import ResolvedBrief, ResolvedDay


def excludes(resolved: ResolvedBrief, exercise: Exercise, day: ResolvedDay) -> bool:
    return exercise.id in resolved.brief.avoid


RULE = Rule(
    id="avoided",
    kind="hard",
    sentence="An avoided exercise stands nowhere.",
    remedy="take it out of `avoid`, or take a swap",
    excludes=excludes,
)
