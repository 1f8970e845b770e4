"""A lift that needs an ability a novice has yet to build."""

from __future__ import annotations

from setwright.catalogue.entries import Exercise
from setwright.solver.evaluation.finding import Rule
from setwright.solver.evaluation.resolved_brief import ResolvedBrief, ResolvedDay


def excludes(resolved: ResolvedBrief, exercise: Exercise, day: ResolvedDay) -> bool:
    return exercise.ability and resolved.experience == "novice" and exercise.id not in resolved.pinned


RULE = Rule(
    id="ability",
    kind="hard",
    sentence="A novice gets a lift that needs ability only when it is pinned.",
    remedy="pin it if the client can do it, or take an easier swap",
    excludes=excludes,
)
