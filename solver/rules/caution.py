"""An exercise that loads a joint under caution."""

from __future__ import annotations

from setwright.catalogue.entries import Exercise
from setwright.solver.evaluation.finding import Rule
from setwright.solver.evaluation.resolved_brief import ResolvedBrief, ResolvedDay


def excludes(resolved: ResolvedBrief, exercise: Exercise, day: ResolvedDay) -> bool:
    closed = {
        joint
        for caution in resolved.brief.client.cautions
        for joint in resolved.catalogue.cautions[caution.tag].closes_joints
    }
    return any(joint in closed for joint in exercise.joints)


RULE = Rule(
    id="caution",
    kind="hard",
    sentence="An exercise that loads a joint under caution stands nowhere.",
    remedy="take a swap, or have a professional set the limits",
    excludes=excludes,
)
