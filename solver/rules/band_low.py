"""Weekly sets short of the band."""

from __future__ import annotations

from collections.abc import Iterator

from setwright.solver.evaluation.finding import Finding, Rule, some_sets
from setwright.solver.evaluation.resolved_brief import Terms
from setwright.solver.evaluation.evaluated_week import WHOLE, View


def counts(terms: Terms, muscle: str) -> bool:
    """Whether a muscle is wanted and can be trained at all with what is at hand."""
    return terms.muscles[muscle].weight > 0 and terms.can_somewhere(lambda e: muscle in e.muscles)


def weight_key(terms: Terms, muscle: str) -> str | None:
    """Which of the rule's two costs a muscle has."""
    large = terms.catalogue.muscles[muscle].size == "large"
    return "large-or-priority" if large or terms.muscles[muscle].emphasis == "priority" else None


def check(view: View) -> Iterator[Finding]:
    for muscle in view.terms.muscles.values():
        short = muscle.low - view.weekly_sets(muscle.id) / WHOLE
        if short > 0 and not muscle.exact_low and counts(view.terms, muscle.id):
            text = f"{muscle.id} has {some_sets(muscle.low - short)}, band from {muscle.low:g}"
            yield Finding("band-low", text, view.terms.charge("band-low", short, weight_key(view.terms, muscle.id)))


RULE = Rule(
    id="band-low",
    kind="scored",
    sentence="Each weekly set of a muscle below its band costs, twice as much for large and priority muscles.",
    remedy="give it a set, or lower its emphasis",
    check=check,
)
