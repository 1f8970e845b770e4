"""Hamstrings without a leg curl."""

from __future__ import annotations

from collections.abc import Iterator

from setwright.catalogue.entries import Exercise
from setwright.solver.evaluation.evaluated_week import EvaluatedWeek
from setwright.solver.evaluation.finding import Finding, Rule
from setwright.solver.evaluation.resolved_brief import ResolvedBrief


def serves(exercise: Exercise) -> bool:
    """Whether an exercise is what the rule asks for."""
    return exercise.movement == "knee-flexion"


def applies(resolved: ResolvedBrief) -> bool:
    """Whether the brief and the kit call for it."""
    return resolved.sought("hamstrings") and resolved.can_somewhere(serves)


def check(evaluated: EvaluatedWeek) -> Iterator[Finding]:
    if applies(evaluated.resolved) and not any(serves(line.exercise) for line in evaluated.lines):
        yield Finding("knee-flexion", "no leg curl in the week", evaluated.resolved.penalty("knee-flexion", 1))


RULE = Rule(
    id="knee-flexion",
    kind="scored",
    sentence="A week that seeks hamstrings has a leg curl.",
    remedy="give the week a leg curl",
    check=check,
)
