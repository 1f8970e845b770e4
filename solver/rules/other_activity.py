"""Heavy work on or before a day of sport or labour."""

from __future__ import annotations

from setwright.catalogue.entries import Exercise
from setwright.solver.evaluation.finding import Rule
from setwright.solver.evaluation.resolved_brief import ResolvedBrief, ResolvedDay


def excludes(resolved: ResolvedBrief, exercise: Exercise, day: ResolvedDay) -> bool:
    return exercise.fatigue == "high" and exercise.region in day.closed_regions


RULE = Rule(
    id="other-activity",
    kind="hard",
    sentence="No high-fatigue lift of a region stands on the day of another activity for it, nor on the day before.",
    remedy="move the session or the lift",
    excludes=excludes,
)
