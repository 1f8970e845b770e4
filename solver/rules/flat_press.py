"""Chest without a flat press or dip."""

from __future__ import annotations

from collections.abc import Iterator

from setwright.catalogue.entries import Exercise
from setwright.solver.evaluation.evaluated_week import EvaluatedWeek
from setwright.solver.evaluation.finding import Finding, Rule
from setwright.solver.evaluation.resolved_brief import ResolvedBrief


def serves(exercise: Exercise) -> bool:
    """Whether an exercise is what the rule asks for."""
    return exercise.slot.id in ("flat-press", "dip")


def applies(resolved: ResolvedBrief) -> bool:
    """Whether the brief and the kit call for it."""
    return resolved.sought("chest") and resolved.can_somewhere(serves)


def check(evaluated: EvaluatedWeek) -> Iterator[Finding]:
    if applies(evaluated.resolved) and not any(serves(line.exercise) for line in evaluated.lines):
        yield Finding("flat-press", "no flat press or dip in the week", evaluated.resolved.penalty("flat-press", 1))


RULE = Rule(
    id="flat-press",
    kind="scored",
    sentence="A week that seeks chest has a flat press or a dip.",
    remedy="make one press flat",
    check=check,
)
