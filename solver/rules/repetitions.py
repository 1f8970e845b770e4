"""Repetitions as the exercise and the loads at hand set them."""

from __future__ import annotations

from collections.abc import Iterator

from setwright.solver.evaluation.evaluated_week import EvaluatedWeek
from setwright.solver.evaluation.finding import Finding, Rule
from setwright.solver.evaluation.prescriptions import reps_of


def check(evaluated: EvaluatedWeek) -> Iterator[Finding]:
    for line in evaluated.lines:
        due = reps_of(evaluated.resolved, line.exercise, line.day)
        if line.entry.reps != due:
            yield Finding("repetitions", f"{line.where} has reps {list(line.entry.reps)}, not {list(due)}")


RULE = Rule(
    id="repetitions",
    kind="data",
    sentence="Repetitions are the exercise's range, moved by the client's liking or by light loads.",
    remedy="print the range of the exercise",
    check=check,
)
