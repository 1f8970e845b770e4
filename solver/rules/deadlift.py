"""A bar at hand, no heavy squat open, and no deadlift."""

from __future__ import annotations

from collections.abc import Iterator

from setwright.catalogue.entries import Exercise
from setwright.solver.evaluation.finding import Finding, Rule
from setwright.solver.evaluation.resolved_brief import Terms
from setwright.solver.evaluation.evaluated_week import View


def serves(exercise: Exercise) -> bool:
    """Whether an exercise is what the rule asks for."""
    return exercise.slot.id == "deadlift"


def applies(terms: Terms) -> bool:
    """Whether a deadlift, which needs no rack and no safeties, is the heaviest leg work that is open."""
    if terms.goal == "efficiency" or terms.minimum_dose or not (terms.sought("glutes") or terms.sought("hamstrings")):
        return False
    return terms.can_somewhere(serves) and not terms.can_somewhere(lambda e: e.slot.id == "squat" and e.main_lift)


def check(view: View) -> Iterator[Finding]:
    if applies(view.terms) and not any(serves(line.exercise) for line in view.lines):
        yield Finding("deadlift", "no deadlift in the week", view.terms.charge("deadlift", 1))


RULE = Rule(
    id="deadlift",
    kind="scored",
    sentence="A week with a bar but no heavy squat open has a deadlift from the floor (not in efficiency).",
    remedy="give one day a deadlift",
    check=check,
)
