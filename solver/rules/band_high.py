"""Weekly sets above the band, from shared lifts."""

from __future__ import annotations

from collections.abc import Iterator

from setwright.solver.evaluation.evaluated_week import WHOLE, EvaluatedWeek
from setwright.solver.evaluation.finding import Finding, Rule


def check(evaluated: EvaluatedWeek) -> Iterator[Finding]:
    for muscle in evaluated.resolved.muscles.values():
        over = evaluated.weekly_sets(muscle.id) / WHOLE - muscle.high
        if over > 0 and not muscle.exact_high:
            text = f"{muscle.id} has {over + muscle.high:g} sets, band up to {muscle.high:g}"
            yield Finding("band-high", text, evaluated.resolved.penalty("band-high", over))


RULE = Rule(
    id="band-high",
    kind="scored",
    sentence="Each weekly set of a muscle above its band costs.",
    remedy="swap a shared lift for one that spares it",
    check=check,
)
