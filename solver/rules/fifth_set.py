"""A lift of five sets."""

from __future__ import annotations

from collections.abc import Iterator

from setwright.catalogue.entries import Exercise
from setwright.solver.evaluation.evaluated_week import EvaluatedWeek
from setwright.solver.evaluation.finding import Finding, Rule
from setwright.solver.evaluation.resolved_brief import ResolvedBrief, ResolvedDay


def applies(resolved: ResolvedBrief, exercise: Exercise, sets: int, day: ResolvedDay) -> bool:
    """Whether a line of so many sets pays this cost."""
    return sets >= 5


def check(evaluated: EvaluatedWeek) -> Iterator[Finding]:
    for line in evaluated.lines:
        if applies(evaluated.resolved, line.exercise, line.sets, line.day):
            yield Finding("fifth-set", f"{line.where} has {line.sets} sets", evaluated.resolved.penalty("fifth-set", 1))


RULE = Rule(
    id="fifth-set",
    kind="scored",
    sentence="A fifth set of a lift costs.",
    remedy="spread its sets",
    check=check,
)
