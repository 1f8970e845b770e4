"""What a brief's cautions and age ask of its week, each part only while the rule that holds it is on."""

from __future__ import annotations

from setwright.catalogue.cautions import ClientLimits, age_group_of, strictest
from setwright.catalogue.entries import Catalogue
from setwright.solver.brief.schema import Brief


def client_limits_of(brief: Brief, catalogue: Catalogue) -> ClientLimits:
    """The strictest of what the client's cautions and age ask, without what a rule that is turned off would hold."""
    group = age_group_of(brief.client.age, catalogue.ages)
    asked = [catalogue.cautions[caution.tag].limits for caution in brief.client.cautions]
    limits = strictest([*asked, *([group.limits] if group else [])])

    def on(rule: str) -> bool:
        return brief.rules.get(rule) != "off"

    return ClientLimits(
        closes_joints=limits.closes_joints if on("caution") else frozenset(),
        closes_positions=limits.closes_positions if on("caution-position") else frozenset(),
        warns_positions=limits.warns_positions,
        rir_least=limits.rir_least if on("caution-effort") else 0,
        reps_least=limits.reps_least if on("caution-repetitions") else 0,
        techniques_off=limits.techniques_off and on("caution-technique"),
        rest_least=limits.rest_least if on("caution-rest") else 0,
        sets_most=limits.sets_most if on("caution-sets") else None,
    )
