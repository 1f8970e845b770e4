"""A muscle's sets in a day above what pays."""

from __future__ import annotations

from collections.abc import Iterator

from setwright.solver.evaluation.evaluated_week import WHOLE, EvaluatedWeek
from setwright.solver.evaluation.finding import Finding, Rule


def check(evaluated: EvaluatedWeek) -> Iterator[Finding]:
    most = evaluated.resolved.limit("muscle-day-cram", "sets")
    for day in evaluated.resolved.days:
        for muscle in evaluated.resolved.muscles:
            over = evaluated.day_sets(muscle, day.index) / WHOLE - most
            if over > 0:
                cost = evaluated.resolved.penalty("muscle-day-cram", over)
                yield Finding("muscle-day-cram", f"{day.name}: {muscle} has {over + most:g} sets", cost)


RULE = Rule(
    id="muscle-day-cram",
    kind="scored",
    sentence="Above 11 fractional sets for a muscle in a day each further set costs.",
    remedy="spread its sets over another day",
    check=check,
)
