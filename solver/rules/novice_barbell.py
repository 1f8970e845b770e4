"""Barbell lifts of a region in a novice's day."""

from __future__ import annotations

from collections.abc import Iterator

from setwright.solver.evaluation.evaluated_week import EvaluatedWeek
from setwright.solver.evaluation.finding import Finding, Rule


def check(evaluated: EvaluatedWeek) -> Iterator[Finding]:
    if evaluated.resolved.experience != "novice":
        return
    most = evaluated.resolved.limit("novice-barbell")
    for day, lines in zip(evaluated.resolved.days, evaluated.on, strict=True):
        for region in ("push", "pull", "lower"):
            count = sum(1 for x in lines if x.exercise.barbell and x.exercise.region == region)
            if count > most:
                yield Finding("novice-barbell", f"{day.name} has {count} barbell lifts for {region}")


RULE = Rule(
    id="novice-barbell",
    kind="hard",
    sentence="A novice has at most 2 barbell lifts of a region a day.",
    remedy="swap one for dumbbells or a machine",
    check=check,
)
