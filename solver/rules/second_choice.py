"""A second choice where the kit has a first."""

from __future__ import annotations

from collections.abc import Iterator

from setwright.catalogue.entries import Exercise
from setwright.solver.evaluation.evaluated_week import EvaluatedWeek
from setwright.solver.evaluation.finding import Finding, Rule
from setwright.solver.evaluation.resolved_brief import ResolvedBrief, ResolvedDay


def applies(resolved: ResolvedBrief, exercise: Exercise, sets: int, day: ResolvedDay) -> bool:
    """Whether a line of so many sets pays this cost."""
    return resolved.second_choice(exercise, day)


def check(evaluated: EvaluatedWeek) -> Iterator[Finding]:
    for line in evaluated.lines:
        if applies(evaluated.resolved, line.exercise, line.sets, line.day):
            yield Finding(
                "second-choice", f"{line.where} is a second choice", evaluated.resolved.penalty("second-choice", 1)
            )


RULE = Rule(
    id="second-choice",
    kind="scored",
    sentence="An exercise of lower rank than another of its movement at hand costs.",
    remedy="take the first choice of the movement",
    check=check,
)
