"""Weekly sets short of the band."""

from __future__ import annotations

from collections.abc import Iterator

from setwright.solver.evaluation.answered_once import answered_once
from setwright.solver.evaluation.evaluated_week import WHOLE, EvaluatedWeek
from setwright.solver.evaluation.finding import Finding
from setwright.solver.evaluation.resolved_brief import ResolvedBrief
from setwright.solver.linear.linear_model import LinearModel, combined
from setwright.solver.linear.rule import Rule
from setwright.solver.linear.weekly_sets import grain_of, sets_of


@answered_once
def counts(resolved: ResolvedBrief, muscle: str) -> bool:
    """Whether a muscle is wanted and can be trained at all with what is at hand."""
    return resolved.muscles[muscle].weight > 0 and resolved.can_somewhere(lambda e: muscle in e.muscles)


def cost_key(resolved: ResolvedBrief, muscle: str) -> str | None:
    """Which of the rule's two costs a muscle has."""
    large = resolved.catalogue.muscles[muscle].size == "large"
    return "large-or-priority" if large or resolved.muscles[muscle].emphasis == "priority" else None


def check(evaluated: EvaluatedWeek) -> Iterator[Finding]:
    """A finding for each wanted muscle with fewer weekly sets than its band begins at."""
    resolved = evaluated.resolved
    for muscle in resolved.muscles.values():
        sets = evaluated.weekly_sets(muscle.id) / WHOLE
        short = muscle.low - sets
        if short > 0 and not muscle.exact_low and counts(resolved, muscle.id):
            cost = resolved.penalty("band-low", short, cost_key(resolved, muscle.id))
            yield Finding("band-low", cost, subject=muscle.id, amount=sets, limit=muscle.low)


def post(model: LinearModel) -> None:
    """Charge each set that a wanted muscle is short of its band."""
    resolved = model.resolved
    for muscle in resolved.muscles.values():
        found = sets_of(model, muscle.id)
        if muscle.low > 0 and not muscle.exact_low and counts(resolved, muscle.id):
            low = round(muscle.low * WHOLE)
            grain = grain_of(found, low)
            cost = resolved.cost("band-low", cost_key(resolved, muscle.id)) * grain / WHOLE
            short = model.violation("band-low", low // grain, cost)
            model.constrain("band-low", combined(found, {short: grain}), low=low)


RULE = Rule(
    id="band-low",
    kind="scored",
    sentence="A muscle should reach the lower end of its band of weekly sets; each set short costs, more for large and priority muscles.",
    remedy="give it a set, or lower its emphasis",
    post=post,
    check=check,
    says="{subject}: {sets}, band from {limit}",
)
