"""A sought muscle without a direct set."""

from __future__ import annotations

from collections.abc import Iterator

from setwright.solver.evaluation.finding import Finding, Rule
from setwright.solver.evaluation.resolved_brief import Terms
from setwright.solver.evaluation.evaluated_week import View


def needing(terms: Terms) -> tuple[str, ...]:
    """The muscles that should have a direct set: sought, and trainable with what is at hand."""
    return tuple(
        m.id
        for m in terms.muscles.values()
        if terms.sought(m.id) and m.id != "front-delts" and terms.can_somewhere(lambda e, m=m: m.id in e.direct)  # type: ignore[misc]
    )


def check(view: View) -> Iterator[Finding]:
    for muscle in needing(view.terms):
        if not view.direct_sets(muscle):
            yield Finding("direct-work", f"no direct set for {muscle}", view.terms.charge("direct-work", 1))


RULE = Rule(
    id="direct-work",
    kind="scored",
    sentence="A muscle at normal or priority (front delts apart) has at least one exercise that trains it directly.",
    remedy="give it one exercise of its own",
    check=check,
)
