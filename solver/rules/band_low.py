"""Weekly sets short of the band."""

from __future__ import annotations

from collections.abc import Iterator

from setwright.solver.evaluation.evaluated_week import WHOLE, EvaluatedWeek
from setwright.solver.evaluation.finding import Finding, Rule, some_sets
from setwright.solver.evaluation.resolved_brief import ResolvedBrief


def counts(resolved: ResolvedBrief, muscle: str) -> bool:
    """Whether a muscle is wanted and can be trained at all with what is at hand."""
    return resolved.muscles[muscle].weight > 0 and resolved.can_somewhere(lambda e: muscle in e.muscles)


def weight_key(resolved: ResolvedBrief, muscle: str) -> str | None:
    """Which of the rule's two costs a muscle has."""
    large = resolved.catalogue.muscles[muscle].size == "large"
    return "large-or-priority" if large or resolved.muscles[muscle].emphasis == "priority" else None


def check(evaluated: EvaluatedWeek) -> Iterator[Finding]:
    for muscle in evaluated.resolved.muscles.values():
        short = muscle.low - evaluated.weekly_sets(muscle.id) / WHOLE
        if short > 0 and not muscle.exact_low and counts(evaluated.resolved, muscle.id):
            text = f"{muscle.id} has {some_sets(muscle.low - short)}, band from {muscle.low:g}"
            yield Finding(
                "band-low",
                text,
                evaluated.resolved.penalty("band-low", short, weight_key(evaluated.resolved, muscle.id)),
            )


RULE = Rule(
    id="band-low",
    kind="scored",
    sentence="Each weekly set of a muscle below its band costs, twice as much for large and priority muscles.",
    remedy="give it a set, or lower its emphasis",
    check=check,
)
