"""Barbell lifts of a region in a novice's day."""

from __future__ import annotations

from collections.abc import Iterator

from setwright.solver.evaluation.finding import Finding, Rule
from setwright.solver.evaluation.evaluated_week import View


def check(view: View) -> Iterator[Finding]:
    if view.terms.experience != "novice":
        return
    most = view.terms.limit("novice-barbell")
    for day, lines in zip(view.terms.days, view.on, strict=True):
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
