"""Repetitions in reserve as set, not solved."""

from __future__ import annotations

from collections.abc import Iterator

from setwright.solver.evaluation.evaluated_week import EvaluatedWeek
from setwright.solver.evaluation.finding import Finding, Rule
from setwright.solver.evaluation.prescriptions import rir_of


def check(evaluated: EvaluatedWeek) -> Iterator[Finding]:
    for line in evaluated.lines:
        due = rir_of(evaluated.resolved, line.exercise)
        if line.entry.rir != due:
            yield Finding("effort", f"{line.where} has {line.entry.rir} RIR, not {due}")


RULE = Rule(
    id="effort",
    kind="data",
    sentence="RIR is 2 for high-fatigue lifts, novices and lone lifts that can pin, else 1.",
    remedy="print the RIR of the kind of lift",
    check=check,
)
