"""An exercise or a piece of kit the client likes."""

from __future__ import annotations

from collections.abc import Iterator

from setwright.catalogue.entries import Exercise
from setwright.solver.evaluation.evaluated_week import EvaluatedWeek
from setwright.solver.evaluation.finding import Finding, Rule
from setwright.solver.evaluation.resolved_brief import ResolvedBrief, ResolvedDay


def applies(resolved: ResolvedBrief, exercise: Exercise, sets: int, day: ResolvedDay) -> bool:
    """Whether a line of so many sets pays this cost."""
    return exercise.id in resolved.brief.like or any(item in resolved.brief.like for item in exercise.needs)


def check(evaluated: EvaluatedWeek) -> Iterator[Finding]:
    for line in evaluated.lines:
        if applies(evaluated.resolved, line.exercise, line.sets, line.day):
            yield Finding("liked", f"{line.where} is liked", -evaluated.resolved.penalty("liked", 1))


RULE = Rule(
    id="liked",
    kind="scored",
    sentence="A liked exercise, or one on liked kit, earns a little.",
    remedy="take liked exercises where they serve",
    check=check,
)
