"""An exercise or a piece of kit the client dislikes."""

from __future__ import annotations

from collections.abc import Iterator

from setwright.catalogue.entries import Exercise
from setwright.solver.evaluation.evaluated_week import EvaluatedWeek
from setwright.solver.evaluation.finding import Finding, Rule
from setwright.solver.evaluation.resolved_brief import ResolvedBrief, ResolvedDay


def applies(resolved: ResolvedBrief, exercise: Exercise, sets: int, day: ResolvedDay) -> bool:
    """Whether a line of so many sets pays this cost."""
    return exercise.id in resolved.brief.dislike or any(item in resolved.brief.dislike for item in exercise.needs)


def check(evaluated: EvaluatedWeek) -> Iterator[Finding]:
    for line in evaluated.lines:
        if applies(evaluated.resolved, line.exercise, line.sets, line.day):
            yield Finding("disliked", f"{line.where} is disliked", evaluated.resolved.penalty("disliked", 1))


RULE = Rule(
    id="disliked",
    kind="scored",
    sentence="A disliked exercise, or one on disliked kit, costs.",
    remedy="swap it",
    check=check,
)
