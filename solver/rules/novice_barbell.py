"""Barbell lifts of a region in a novice's day."""

from __future__ import annotations

from collections.abc import Iterator

from setwright.solver.evaluation.evaluated_week import EvaluatedWeek
from setwright.solver.evaluation.finding import Finding
from setwright.solver.linear.columns import REGIONS
from setwright.solver.linear.linear_model import LinearModel
from setwright.solver.linear.rule import Rule


def check(evaluated: EvaluatedWeek) -> Iterator[Finding]:
    """A finding for each region with too many barbell lifts in a novice's day."""
    if evaluated.resolved.experience != "novice":
        return
    most = evaluated.resolved.limit("novice-barbell")
    for day, lines in zip(evaluated.resolved.days, evaluated.on, strict=True):
        for region in REGIONS:
            count = sum(1 for x in lines if x.exercise.barbell and x.exercise.region == region)
            if count > most:
                yield Finding("novice-barbell", subject=region, amount=count, limit=most, days=(day.index,))


def post(model: LinearModel) -> None:
    """At most so many barbell lifts of each region on each day."""
    if model.resolved.experience != "novice":
        return
    most = round(model.resolved.limit("novice-barbell"))
    for group in model.groups:
        for region in REGIONS:
            found = model.count(lambda e, r=region: e.barbell and e.region == r, group.index)
            model.at_most_a_day("novice-barbell", found, most, group.index)


RULE = Rule(
    id="novice-barbell",
    kind="hard",
    scope="planned weeks",
    sentence="A novice has at most {limit:g} barbell lifts of a region in a day.",
    remedy="swap one for dumbbells or a machine",
    post=post,
    check=check,
    says="{day} has {amount} barbell lifts for {subject}",
)
