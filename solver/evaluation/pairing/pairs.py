"""Which two exercises may be done in turn."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from types import MappingProxyType

from setwright.catalogue.entries import Exercise
from setwright.solver.evaluation.pairing.partner_effect import PartnerEffect
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


MISFITS: Mapping[str, str] = MappingProxyType(
    {
        "not-for-pairs": "{others} is not for pairs",
        "prime-mover": "the two share a prime mover",
        "grip": "both are limited by grip",
        "one-station": "both need the same station",
        "heavy-alone": "{others} tires much and goes only with an opposing push or pull",
        "single-stations": "the two would hold two stations of which there is one each",
        "one-bar": "one bar cannot hold two loads",
        "two-places": "the two stand at two places and do not oppose each other",
        "busy": "at peak hour a pair stays at one place",
        "same-region": "the two work the same region",
    }
)
"""Reasons why two exercises may not be a pair, and how each is said of the exercise that is the reason."""


@dataclass(frozen=True)
class Misfit:
    """Why two exercises may not be a pair: a key of MISFITS, and the id of the one that is the reason, if one is."""

    reason: str
    exercise: str = ""


def unfit(resolved: ResolvedBrief, a: Exercise, b: Exercise) -> Iterator[Misfit]:
    """Why two exercises may not be a pair; nothing when they may."""
    for exercise in (a, b):
        if not pairable(resolved, exercise):
            yield Misfit("not-for-pairs", exercise.id)
    if a.direct & b.muscles or b.direct & a.muscles:
        yield Misfit("prime-mover")
    if a.grip_limited and b.grip_limited:
        yield Misfit("grip")
    if places(resolved, a, "fixed") & places(resolved, b, "fixed"):
        yield Misfit("one-station")
    if {a.region, b.region} != {"push", "pull"}:
        for exercise in (a, b):
            if exercise.fatigue == "high":
                yield Misfit("heavy-alone", exercise.id)
    if holds_two_single_stations(resolved, a, b):
        yield Misfit("single-stations")
    if any(bar in a.needs and bar in b.needs for bar in BARS):
        yield Misfit("one-bar")
    if walk_between(resolved, a, b) and not opposing(a, b):
        yield Misfit("two-places")
    if resolved.brief.owned.busy and two_places(resolved, a, b):
        yield Misfit("busy")
    if same_work(a, b):
        yield Misfit("same-region")


def two_places(resolved: ResolvedBrief, a: Exercise, b: Exercise) -> bool:
    """Whether a pair holds two places at once, or carries weights to a station."""
    held = places(resolved, a, "fixed", "place") | places(resolved, b, "fixed", "place")
    return len(held) > 1 or walk_between(resolved, a, b)


def holds_two_single_stations(resolved: ResolvedBrief, a: Exercise, b: Exercise) -> bool:
    """Whether a pair would hold two different stations of which the brief says that there is one each."""
    single = frozenset(resolved.brief.owned.single)
    mine, others = single.intersection(a.needs), single.intersection(b.needs)
    return bool(mine - others) and bool(others - mine)


def opposing(a: Exercise, b: Exercise) -> bool:
    """Whether two exercises are a push and a pull, or train muscles that oppose each other."""
    push_and_pull = {a.region, b.region} == {"push", "pull"}
    return push_and_pull or any(frozenset((m, n)) in OPPOSING for m in a.direct for n in b.direct)


def same_work(a: Exercise, b: Exercise) -> bool:
    """Whether two exercises are of one region without working opposing muscles."""
    if opposing(a, b):
        return False
    if a.region == b.region == "other":
        return a.movement == b.movement
    return a.region == b.region


def fits(resolved: ResolvedBrief, a: Exercise, b: Exercise) -> bool:
    """Whether two exercises may be a pair."""
    return next(unfit(resolved, a, b), None) is None


def walk_between(resolved: ResolvedBrief, a: Exercise, b: Exercise) -> bool:
    """Whether two exercises stand at two fixed stations, or one at a station to which the other's weights go."""
    fixed_a, fixed_b = places(resolved, a, "fixed"), places(resolved, b, "fixed")
    if fixed_a and fixed_b:
        return fixed_a != fixed_b
    return any(fixed and any(item in WEIGHTS for item in other.needs) for fixed, other in ((fixed_a, b), (fixed_b, a)))


def effect_of_partner(resolved: ResolvedBrief, a: Exercise, b: Exercise) -> PartnerEffect:
    """What two exercises done in turn take from each other: muscles, grip and breath that both use, and a walk."""
    both_large = a.multi_joint and b.multi_joint
    return PartnerEffect(
        shared_muscles=len((a.muscles - a.direct) & (b.muscles - b.direct)),
        grip=(a.grip_limited or b.grip_limited) and "forearms" in a.muscles & b.muscles,
        large_lifts=both_large * (1 + ("high" in (a.fatigue, b.fatigue))),
        apart=walk_between(resolved, a, b),
    )
