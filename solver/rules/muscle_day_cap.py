"""A muscle's sets in a day, at most."""

from __future__ import annotations

from collections.abc import Iterator

from setwright.solver.evaluation.finding import Finding, Rule, some_sets
from setwright.solver.evaluation.evaluated_week import WHOLE, View


def check(view: View) -> Iterator[Finding]:
    most = view.terms.limit("muscle-day-cap")
    for day in view.terms.days:
        for muscle in view.terms.muscles:
            sets = view.day_sets(muscle, day.index) / WHOLE
            if sets > most:
                yield Finding("muscle-day-cap", f"{day.name}: {muscle} has {some_sets(sets)}, at most {most:g}")


RULE = Rule(
    id="muscle-day-cap",
    kind="hard",
    sentence="A muscle gets at most 14 fractional sets in a day.",
    remedy="spread its sets over another day",
    check=check,
)
