"""A sought muscle without a direct set."""

from __future__ import annotations

from collections.abc import Iterator

from setwright.solver.evaluation.evaluated_week import EvaluatedWeek
from setwright.solver.evaluation.finding import Finding, Rule
from setwright.solver.evaluation.resolved_brief import ResolvedBrief


def needing(resolved: ResolvedBrief) -> tuple[str, ...]:
    """The muscles that should have a direct set: sought, and trainable with what is at hand."""
    return tuple(
        m.id
        for m in resolved.muscles.values()
        if resolved.sought(m.id) and m.id != "front-delts" and resolved.can_somewhere(lambda e, m=m: m.id in e.direct)  # type: ignore[misc]
    )


def check(evaluated: EvaluatedWeek) -> Iterator[Finding]:
    for muscle in needing(evaluated.resolved):
        if not evaluated.direct_sets(muscle):
            yield Finding("direct-work", f"no direct set for {muscle}", evaluated.resolved.penalty("direct-work", 1))


RULE = Rule(
    id="direct-work",
    kind="scored",
    sentence="A muscle at normal or priority (front delts apart) has at least one exercise that trains it directly.",
    remedy="give it one exercise of its own",
    check=check,
)
