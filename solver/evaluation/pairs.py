"""Which two exercises may be done in turn."""

from __future__ import annotations

from collections.abc import Iterator

from setwright.catalogue.entries import Exercise
from setwright.solver.evaluation.prescriptions import pairable
from setwright.solver.evaluation.resolved_brief import ResolvedBrief

OPPOSING = frozenset(
    frozenset(pair)
    for pair in (
        ("biceps", "triceps"),
        ("chest", "upper-back"),
        ("chest", "rear-delts"),
        ("front-delts", "lats"),
        ("front-delts", "rear-delts"),
        ("quads", "hamstrings"),
        ("abs", "spinal-erectors"),
        ("abductors", "adductors"),
    )
)
WEIGHTS = ("barbell", "ez-bar", "trap-bar", "dumbbell", "kettlebell", "plate")
BARS = ("barbell", "ez-bar", "trap-bar")


def places(resolved: ResolvedBrief, exercise: Exercise, *kinds: str) -> frozenset[str]:
    """The equipment of an exercise that is of these place kinds."""
    return frozenset(
        i for i in exercise.needs if i in resolved.catalogue.items and resolved.catalogue.items[i].place in kinds
    )


def unfit(resolved: ResolvedBrief, a: Exercise, b: Exercise) -> Iterator[str]:
    """Why two exercises may not be a pair; nothing when they may."""
    for exercise in (a, b):
        if not pairable(resolved, exercise):
            yield f"{exercise.name} is not for pairs"
    if a.direct & b.muscles or b.direct & a.muscles:
        yield "the two share a prime mover"
    if a.grip_limited and b.grip_limited:
        yield "both are limited by grip"
    fixed_a, fixed_b = places(resolved, a, "fixed"), places(resolved, b, "fixed")
    if fixed_a and fixed_b:
        yield "both need a fixed station"
    for fixed, other in ((fixed_a, b), (fixed_b, a)):
        if fixed and any(item in WEIGHTS for item in other.needs):
            yield f"{other.name} would carry weights to a station"
    if any(bar in a.needs and bar in b.needs for bar in BARS):
        yield "one bar cannot hold two loads"
    if (
        resolved.brief.owned.busy
        and len(places(resolved, a, "fixed", "place") | places(resolved, b, "fixed", "place")) > 1
    ):
        yield "at peak hour a pair stays at one place"
    if same_work(a, b):
        yield "the two work the same region"


def same_work(a: Exercise, b: Exercise) -> bool:
    """Whether two exercises are of one region without working opposing muscles."""
    if any(frozenset((m, n)) in OPPOSING for m in a.direct for n in b.direct):
        return False
    if a.region == b.region == "other":
        return a.movement == b.movement
    return a.region == b.region


def fits(resolved: ResolvedBrief, a: Exercise, b: Exercise) -> bool:
    return next(unfit(resolved, a, b), None) is None


def shared_indirect(a: Exercise, b: Exercise) -> tuple[str, ...]:
    """The muscles that both train indirectly."""
    return tuple(sorted((a.muscles - a.direct) & (b.muscles - b.direct)))
