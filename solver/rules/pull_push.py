"""Fewer pull sets than push sets."""

from __future__ import annotations

from collections.abc import Iterator

from setwright.solver.evaluation.evaluated_week import EvaluatedWeek
from setwright.solver.evaluation.finding import Finding
from setwright.solver.evaluation.resolved_brief import ResolvedBrief
from setwright.solver.linear.linear_model import LinearModel, combined
from setwright.solver.linear.rule import Rule

MOST_OVER = 200
"""Push sets above the pull sets that a week can never have."""


def applies(resolved: ResolvedBrief) -> bool:
    """Whether the back is wanted and a pull is possible."""
    wanted = resolved.sought("upper-back") or resolved.sought("lats")
    return wanted and resolved.can_somewhere(lambda e: e.multi_joint and e.region == "pull")


def check(evaluated: EvaluatedWeek) -> Iterator[Finding]:
    """A finding where the week has fewer multi-joint pull sets than push sets."""
    pull, push = (
        sum(x.sets for x in evaluated.lines if x.exercise.multi_joint and x.exercise.region == region)
        for region in ("pull", "push")
    )
    if push > pull and applies(evaluated.resolved):
        cost = evaluated.resolved.penalty("pull-push", push - pull)
        yield Finding("pull-push", cost, amount=pull, limit=push)


def post(model: LinearModel) -> None:
    """Charge each push set above the pull sets."""
    resolved = model.resolved
    if not applies(resolved):
        return
    sign = {"push": 1, "pull": -1}
    found = model.total(lambda e, p: p.sets * sign.get(e.region, 0) if e.multi_joint else 0)
    over = model.violation("pull-push", MOST_OVER, resolved.cost("pull-push"))
    model.constrain("pull-push", combined(found, {over: -1}), high=0)


RULE = Rule(
    id="pull-push",
    kind="scored",
    sentence="A week should have at least as many multi-joint pull sets as push sets.",
    remedy="swap a press set for a row set",
    post=post,
    check=check,
    says="{amount} pull sets and {limit} push sets",
)
