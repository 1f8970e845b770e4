"""More hinge days than knee days."""

from __future__ import annotations

from collections.abc import Iterator

from setwright.solver.evaluation.finding import Finding, Rule
from setwright.solver.evaluation.resolved_brief import Terms
from setwright.solver.evaluation.evaluated_week import View


def applies(terms: Terms) -> bool:
    """Whether knee lifts are wanted and possible."""
    return terms.sought("quads") and terms.can_somewhere(lambda e: e.movement == "knee")


def check(view: View) -> Iterator[Finding]:
    hinges = len(view.days_with(lambda x: x.exercise.movement == "hinge"))
    knees = len(view.days_with(lambda x: x.exercise.movement == "knee"))
    if hinges > knees and applies(view.terms):
        text = f"{hinges} hinge days and {knees} knee days"
        yield Finding("hinge-over-knee", text, view.terms.charge("hinge-over-knee", hinges - knees))


RULE = Rule(
    id="hinge-over-knee",
    kind="scored",
    sentence="Hinges stand on no more days than knee lifts.",
    remedy="swap a hinge for a squat or a leg press",
    check=check,
)
