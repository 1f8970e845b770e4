"""A small priority muscle without single-joint work."""

from __future__ import annotations

from collections.abc import Iterator

from setwright.solver.evaluation.finding import Finding, Rule
from setwright.solver.evaluation.resolved_brief import Terms
from setwright.solver.evaluation.evaluated_week import View


def isolation_due(terms: Terms, muscle: str) -> float:
    """The single-joint sets a priority muscle should have."""
    if not terms.catalogue.muscles[muscle].isolate:
        return 0.0
    if not terms.can_somewhere(lambda e: muscle in e.direct and not e.multi_joint):
        return 0.0
    return terms.muscles[muscle].low * terms.limit("priority-isolation", "share-of-band")


def check(view: View) -> Iterator[Finding]:
    for muscle in view.terms.priorities:
        due = isolation_due(view.terms, muscle)
        own = sum(
            line.option.credited
            for line in view.lines
            if muscle in line.exercise.direct and not line.exercise.multi_joint
        )
        short = due - own / 100
        if short > 0:
            text = f"{muscle} has {own / 100:g} of {due:g} single-joint sets"
            yield Finding("priority-isolation", text, view.terms.charge("priority-isolation", short))


RULE = Rule(
    id="priority-isolation",
    kind="scored",
    sentence="A small priority muscle gets at least half its lower band end from single-joint lifts.",
    remedy="give it curls, extensions or raises of its own",
    check=check,
)
