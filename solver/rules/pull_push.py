"""Fewer pull sets than push sets."""

from __future__ import annotations

from collections.abc import Iterator

from setwright.solver.evaluation.evaluated_week import EvaluatedWeek
from setwright.solver.evaluation.finding import Finding, Rule
from setwright.solver.evaluation.resolved_brief import ResolvedBrief


def applies(resolved: ResolvedBrief) -> bool:
    """Whether the back is wanted and a pull is possible."""
    wanted = resolved.sought("upper-back") or resolved.sought("lats")
    return wanted and resolved.can_somewhere(lambda e: e.multi_joint and e.region == "pull")


def check(evaluated: EvaluatedWeek) -> Iterator[Finding]:
    pull, push = (
        sum(x.sets for x in evaluated.lines if x.exercise.multi_joint and x.exercise.region == region)
        for region in ("pull", "push")
    )
    if push > pull and applies(evaluated.resolved):
        text = f"{pull} pull sets and {push} push sets"
        yield Finding("pull-push", text, evaluated.resolved.penalty("pull-push", push - pull))


RULE = Rule(
    id="pull-push",
    kind="scored",
    sentence="Multi-joint pull sets are at least as many as push sets.",
    remedy="swap a press set for a row set",
    check=check,
)
