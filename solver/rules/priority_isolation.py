"""A small priority muscle without single-joint work."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from setwright.solver.evaluation.evaluated_week import EvaluatedWeek
from setwright.solver.evaluation.finding import Finding
from setwright.solver.evaluation.resolved_brief import ResolvedBrief
from setwright.solver.linear.linear_model import LinearModel, combined
from setwright.solver.linear.rule import Rule
from setwright.solver.linear.weekly_sets import grain_of


def isolation_due(resolved: ResolvedBrief, muscle: str) -> float:
    """The single-joint sets a priority muscle should have."""
    if not resolved.catalogue.muscles[muscle].isolate:
        return 0.0
    if not resolved.can_somewhere(lambda e: muscle in e.direct and not e.multi_joint):
        return 0.0
    return resolved.muscles[muscle].low * resolved.limit("priority-isolation", "share-of-band")


def check(evaluated: EvaluatedWeek) -> Iterator[Finding]:
    """A finding for each small priority muscle with too few single-joint sets."""
    for muscle in evaluated.resolved.priorities:
        due = isolation_due(evaluated.resolved, muscle)
        own = sum(
            line.prescription.credited
            for line in evaluated.lines
            if muscle in line.exercise.direct and not line.exercise.multi_joint
        )
        short = due - own / 100
        if short > 0:
            cost = evaluated.resolved.penalty("priority-isolation", short)
            yield Finding("priority-isolation", cost, subject=muscle, amount=own / 100, limit=due)


def post(model: LinearModel) -> None:
    """Charge each single-joint set that a small priority muscle is short."""
    resolved = model.resolved
    for muscle in resolved.priorities:
        due = round(100 * isolation_due(resolved, muscle))
        found = model.total(lambda e, p, m=muscle: 0 if e.multi_joint or m not in e.direct else p.credited)
        if due and found:
            grain = grain_of(found, due)
            cost = resolved.cost("priority-isolation") * grain / 100
            short = model.violation("priority-isolation", due // grain, cost)
            model.constrain("priority-isolation", combined(found, {short: grain}), low=due)


def figures(resolved: ResolvedBrief) -> Mapping[str, object]:
    """The share of the band in hundredths."""
    return {"percent": f"{100 * resolved.limit('priority-isolation', 'share-of-band'):g}"}


RULE = Rule(
    id="priority-isolation",
    kind="scored",
    sentence="A small priority muscle should get at least {percent} % of the lower end of its band from single-joint lifts.",
    remedy="give it curls, extensions or raises of its own",
    post=post,
    check=check,
    says="{subject} has {amount} of {limit} single-joint sets",
    figures=figures,
)
