"""Weekly sets within the band the brief says."""

from __future__ import annotations

from collections.abc import Iterator

from setwright.solver.evaluation.evaluated_week import WHOLE, EvaluatedWeek
from setwright.solver.evaluation.finding import Finding, Rule, some_sets


def check(evaluated: EvaluatedWeek) -> Iterator[Finding]:
    for muscle in evaluated.resolved.muscles.values():
        sets = evaluated.weekly_sets(muscle.id) / WHOLE
        if muscle.exact_low and sets < muscle.low:
            yield Finding("exact-band", f"{muscle.id} has {some_sets(sets)}, at least {muscle.low:g}")
        if muscle.exact_high and sets > muscle.high:
            yield Finding("exact-band", f"{muscle.id} has {some_sets(sets)}, at most {muscle.high:g}")


RULE = Rule(
    id="exact-band",
    kind="hard",
    sentence="A muscle's weekly sets keep the band the brief says.",
    remedy="widen the band, or give the week more time",
    check=check,
)
