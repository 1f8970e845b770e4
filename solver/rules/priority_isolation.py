"""A small priority muscle without single-joint work."""

from __future__ import annotations

from collections.abc import Iterator

from setwright.solver.evaluation.evaluated_week import EvaluatedWeek
from setwright.solver.evaluation.finding import Finding, Rule
from setwright.solver.evaluation.resolved_brief import ResolvedBrief


def isolation_due(resolved: ResolvedBrief, muscle: str) -> float:
    """The single-joint sets a priority muscle should have."""
    if not resolved.catalogue.muscles[muscle].isolate:
        return 0.0
    if not resolved.can_somewhere(lambda e: muscle in e.direct and not e.multi_joint):
        return 0.0
    return resolved.muscles[muscle].low * resolved.limit("priority-isolation", "share-of-band")


def check(evaluated: EvaluatedWeek) -> Iterator[Finding]:
    for muscle in evaluated.resolved.priorities:
        due = isolation_due(evaluated.resolved, muscle)
        own = sum(
            line.prescription.credited
            for line in evaluated.lines
            if muscle in line.exercise.direct and not line.exercise.multi_joint
        )
        short = due - own / 100
        if short > 0:
            text = f"{muscle} has {own / 100:g} of {due:g} single-joint sets"
            yield Finding("priority-isolation", text, evaluated.resolved.penalty("priority-isolation", short))


RULE = Rule(
    id="priority-isolation",
    kind="scored",
    sentence="A small priority muscle gets at least half its lower band end from single-joint lifts.",
    remedy="give it curls, extensions or raises of its own",
    check=check,
)
