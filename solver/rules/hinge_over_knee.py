"""More hinge days than knee days."""

from __future__ import annotations

from collections.abc import Iterator

from setwright.solver.evaluation.evaluated_week import EvaluatedWeek
from setwright.solver.evaluation.finding import Finding, Rule
from setwright.solver.evaluation.resolved_brief import ResolvedBrief


def applies(resolved: ResolvedBrief) -> bool:
    """Whether knee lifts are wanted and possible."""
    return resolved.sought("quads") and resolved.can_somewhere(lambda e: e.movement == "knee")


def check(evaluated: EvaluatedWeek) -> Iterator[Finding]:
    hinges = len(evaluated.days_with(lambda x: x.exercise.movement == "hinge"))
    knees = len(evaluated.days_with(lambda x: x.exercise.movement == "knee"))
    if hinges > knees and applies(evaluated.resolved):
        text = f"{hinges} hinge days and {knees} knee days"
        yield Finding("hinge-over-knee", text, evaluated.resolved.penalty("hinge-over-knee", hinges - knees))


RULE = Rule(
    id="hinge-over-knee",
    kind="scored",
    sentence="Hinges stand on no more days than knee lifts.",
    remedy="swap a hinge for a squat or a leg press",
    check=check,
)
