"""A muscle's sets in a day, at most."""

from __future__ import annotations

from collections.abc import Iterator

from setwright.solver.evaluation.evaluated_week import WHOLE, EvaluatedWeek
from setwright.solver.evaluation.finding import Finding, Rule, some_sets


def check(evaluated: EvaluatedWeek) -> Iterator[Finding]:
    most = evaluated.resolved.limit("muscle-day-cap")
    for day in evaluated.resolved.days:
        for muscle in evaluated.resolved.muscles:
            sets = evaluated.day_sets(muscle, day.index) / WHOLE
            if sets > most:
                yield Finding("muscle-day-cap", f"{day.name}: {muscle} has {some_sets(sets)}, at most {most:g}")


RULE = Rule(
    id="muscle-day-cap",
    kind="hard",
    sentence="A muscle gets at most 14 fractional sets in a day.",
    remedy="spread its sets over another day",
    check=check,
)
