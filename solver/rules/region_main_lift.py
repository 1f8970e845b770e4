"""A region or a movement without a main lift in the week."""

from __future__ import annotations

from collections.abc import Iterator

from setwright.catalogue.entries import Exercise
from setwright.solver.evaluation.finding import Finding, Rule
from setwright.solver.evaluation.resolved_brief import DayTerms, Terms
from setwright.solver.evaluation.evaluated_week import View

Part = tuple[str, tuple[str, ...]]
"""(name in words, movements that count)."""

REGIONS: tuple[Part, ...] = (
    ("push", ("horizontal-press", "vertical-press")),
    ("pull", ("row", "vertical-pull")),
    ("lower", ("knee", "hinge", "thrust")),
)
MOVEMENTS: tuple[Part, ...] = (
    ("horizontal press", ("horizontal-press",)),
    ("vertical press", ("vertical-press",)),
    ("row", ("row",)),
    ("vertical pull", ("vertical-pull",)),
    ("knee", ("knee",)),
    ("hinge", ("hinge",)),
)


def owed(terms: Terms) -> tuple[Part, ...]:
    """The parts that should have a main lift: regions, in longer weeks their movements but for a novice."""
    if terms.goal == "efficiency" or terms.minimum_dose:
        return ()
    long = len(terms.days) >= terms.limit("region-main-lift", "movements-days") and terms.experience != "novice"
    return tuple(part for part in (MOVEMENTS if long else REGIONS) if any(able(terms, part, d) for d in terms.days))


def able(terms: Terms, part: Part, day: DayTerms) -> bool:
    """Whether a first or second choice that counts is open on the day and trains a muscle that is sought."""
    return terms.can(
        day,
        lambda e: serves(terms, part, e, day) and terms.rank(e, day) < 3 and any(terms.sought(m) for m in e.direct),
    )


def serves(terms: Terms, part: Part, exercise: Exercise, day: DayTerms) -> bool:
    """Whether an exercise is a main lift of the part."""
    return exercise.movement in part[1] and terms.builds(exercise, day)


def check(view: View) -> Iterator[Finding]:
    for part in owed(view.terms):
        if not view.count(lambda x, p=part: serves(view.terms, p, x.exercise, x.day)):  # type: ignore[misc]
            text = f"no main {part[0]} lift in the week"
            yield Finding("region-main-lift", text, view.terms.charge("region-main-lift", 1))


RULE = Rule(
    id="region-main-lift",
    kind="scored",
    sentence="Each region has a high-fatigue multi-joint lift a week that is no second choice, each movement of it in weeks of 3 days or more (not for a novice, nor in efficiency).",
    remedy="make one of its lifts a free-weight lift",
    check=check,
)
