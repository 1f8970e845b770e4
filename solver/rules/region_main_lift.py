"""A region or a movement without a main lift in the week."""

from __future__ import annotations

from collections.abc import Iterator

from setwright.catalogue.entries import Exercise
from setwright.solver.evaluation.evaluated_week import EvaluatedWeek
from setwright.solver.evaluation.finding import Finding, Rule
from setwright.solver.evaluation.resolved_brief import ResolvedBrief, ResolvedDay

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


def owed(resolved: ResolvedBrief) -> tuple[Part, ...]:
    """The parts that should have a main lift: regions, in longer weeks their movements but for a novice."""
    if resolved.goal == "efficiency" or resolved.minimum_dose:
        return ()
    long = (
        len(resolved.days) >= resolved.limit("region-main-lift", "movements-days") and resolved.experience != "novice"
    )
    return tuple(
        part for part in (MOVEMENTS if long else REGIONS) if any(able(resolved, part, d) for d in resolved.days)
    )


def able(resolved: ResolvedBrief, part: Part, day: ResolvedDay) -> bool:
    """Whether a first or second choice that counts is open on the day and trains a muscle that is sought."""
    return resolved.can(
        day,
        lambda e: (
            serves(resolved, part, e, day) and resolved.rank(e, day) < 3 and any(resolved.sought(m) for m in e.direct)
        ),
    )


def serves(resolved: ResolvedBrief, part: Part, exercise: Exercise, day: ResolvedDay) -> bool:
    """Whether an exercise is a main lift of the part."""
    return exercise.movement in part[1] and resolved.builds(exercise, day)


def check(evaluated: EvaluatedWeek) -> Iterator[Finding]:
    for part in owed(evaluated.resolved):
        if not evaluated.count(lambda x, p=part: serves(evaluated.resolved, p, x.exercise, x.day)):  # type: ignore[misc]
            text = f"no main {part[0]} lift in the week"
            yield Finding("region-main-lift", text, evaluated.resolved.penalty("region-main-lift", 1))


RULE = Rule(
    id="region-main-lift",
    kind="scored",
    sentence="Each region has a high-fatigue multi-joint lift a week that is no second choice, each movement of it in weeks of 3 days or more (not for a novice, nor in efficiency).",
    remedy="make one of its lifts a free-weight lift",
    check=check,
)
