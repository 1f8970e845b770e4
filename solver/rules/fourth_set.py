"""A fourth set of a single-joint lift."""

from __future__ import annotations

from collections.abc import Iterator

from setwright.catalogue.entries import Exercise
from setwright.solver.evaluation.evaluated_week import EvaluatedWeek
from setwright.solver.evaluation.finding import Finding, Rule
from setwright.solver.evaluation.resolved_brief import ResolvedBrief, ResolvedDay


def applies(resolved: ResolvedBrief, exercise: Exercise, sets: int, day: ResolvedDay) -> bool:
    """Whether a line of so many sets pays this cost."""
    return sets == 4 and not exercise.multi_joint


def check(evaluated: EvaluatedWeek) -> Iterator[Finding]:
    for line in evaluated.lines:
        if applies(evaluated.resolved, line.exercise, line.sets, line.day):
            yield Finding("fourth-set", f"{line.where} has 4 sets", evaluated.resolved.penalty("fourth-set", 1))


RULE = Rule(
    id="fourth-set",
    kind="scored",
    sentence="A fourth set of a single-joint lift costs.",
    remedy="spread its sets",
    check=check,
)
