"""A bar at hand, no heavy squat open, and no deadlift."""

from __future__ import annotations

from collections.abc import Iterator

from setwright.catalogue.entries import Exercise
from setwright.solver.evaluation.evaluated_week import EvaluatedWeek
from setwright.solver.evaluation.finding import Finding, Rule
from setwright.solver.evaluation.resolved_brief import ResolvedBrief


def serves(exercise: Exercise) -> bool:
    """Whether an exercise is what the rule asks for."""
    return exercise.slot.id == "deadlift"


def applies(resolved: ResolvedBrief) -> bool:
    """Whether a deadlift, which needs no rack and no safeties, is the heaviest leg work that is open."""
    if (
        resolved.goal == "efficiency"
        or resolved.minimum_dose
        or not (resolved.sought("glutes") or resolved.sought("hamstrings"))
    ):
        return False
    return resolved.can_somewhere(serves) and not resolved.can_somewhere(lambda e: e.slot.id == "squat" and e.main_lift)


def check(evaluated: EvaluatedWeek) -> Iterator[Finding]:
    if applies(evaluated.resolved) and not any(serves(line.exercise) for line in evaluated.lines):
        yield Finding("deadlift", "no deadlift in the week", evaluated.resolved.penalty("deadlift", 1))


RULE = Rule(
    id="deadlift",
    kind="scored",
    sentence="A week with a bar but no heavy squat open has a deadlift from the floor (not in efficiency).",
    remedy="give one day a deadlift",
    check=check,
)
