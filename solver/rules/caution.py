"""An exercise that loads a joint under caution."""

from __future__ import annotations

from setwright.catalogue.entries import Exercise
from setwright.solver.evaluation.finding import Rule
from setwright.solver.evaluation.resolved_brief import DayTerms, Terms


def closes(terms: Terms, exercise: Exercise, day: DayTerms) -> bool:
    closed = {
        joint
        for caution in terms.brief.client.cautions
        for joint in terms.catalogue.cautions[caution.tag].closes_joints
    }
    return any(joint in closed for joint in exercise.joints)


RULE = Rule(
    id="caution",
    kind="hard",
    sentence="An exercise that loads a joint under caution stands nowhere.",
    remedy="take a swap, or have a professional set the limits",
    closes=closes,
)
