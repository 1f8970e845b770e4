"""Repetitions as the exercise and the loads at hand set them."""

from __future__ import annotations

from collections.abc import Iterator

from setwright.solver.evaluation.prescriptions import reps_of
from setwright.solver.evaluation.finding import Finding, Rule
from setwright.solver.evaluation.evaluated_week import View


def check(view: View) -> Iterator[Finding]:
    for line in view.lines:
        due = reps_of(view.terms, line.exercise, line.day)
        if line.entry.reps != due:
            yield Finding("repetitions", f"{line.where} has reps {list(line.entry.reps)}, not {list(due)}")


RULE = Rule(
    id="repetitions",
    kind="data",
    sentence="Repetitions are the exercise's range, moved by the client's liking or by light loads.",
    remedy="print the range of the exercise",
    check=check,
)
