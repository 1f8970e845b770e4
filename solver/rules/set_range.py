"""Sets per exercise and day."""

from __future__ import annotations

from collections.abc import Iterator

from setwright.solver.evaluation.evaluated_week import EvaluatedWeek
from setwright.solver.evaluation.finding import Finding, Rule, some_sets
from setwright.solver.evaluation.prescriptions import MOST_WITH_TECHNIQUE, set_span


def check(evaluated: EvaluatedWeek) -> Iterator[Finding]:
    for line in evaluated.lines:
        least, most = set_span(evaluated.resolved, line.exercise)
        if line.entry.technique != "straight":
            most = min(most, MOST_WITH_TECHNIQUE)
        if not least <= line.sets <= most:
            yield Finding("set-range", f"{line.where} has {some_sets(line.sets)}, not {least} to {most}")


RULE = Rule(
    id="set-range",
    kind="hard",
    sentence="An exercise has its 2 to 4 sets a day: 5 at most for multi-joint lifts in growth (not in a one-day week) or for a priority, 3 for trunk work, deadlifts and technique sets, 1 to 2 in a minimum dose.",
    remedy="change the sets",
    check=check,
)
