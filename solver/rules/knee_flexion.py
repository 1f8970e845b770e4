"""Hamstrings without a leg curl."""

from __future__ import annotations

from collections.abc import Iterator

from setwright.catalogue.entries import Exercise
from setwright.solver.evaluation.finding import Finding, Rule
from setwright.solver.evaluation.resolved_brief import Terms
from setwright.solver.evaluation.evaluated_week import View


def serves(exercise: Exercise) -> bool:
    """Whether an exercise is what the rule asks for."""
    return exercise.movement == "knee-flexion"


def applies(terms: Terms) -> bool:
    """Whether the brief and the kit call for it."""
    return terms.sought("hamstrings") and terms.can_somewhere(serves)


def check(view: View) -> Iterator[Finding]:
    if applies(view.terms) and not any(serves(line.exercise) for line in view.lines):
        yield Finding("knee-flexion", "no leg curl in the week", view.terms.charge("knee-flexion", 1))


RULE = Rule(
    id="knee-flexion",
    kind="scored",
    sentence="A week that seeks hamstrings has a leg curl.",
    remedy="give the week a leg curl",
    check=check,
)
