"""Which half pairs of a cell can be matched; explicit pairs fit by their columns."""

from __future__ import annotations

from collections.abc import Callable, Mapping

from setwright.catalogue.entries import Exercise
from setwright.solver.evaluation.pairs import places
from setwright.solver.evaluation.prescriptions import Prescription
from setwright.solver.linear.columns import REGIONS
from setwright.solver.linear.linear_model import LinearModel, combined


def half(model: LinearModel, column: int) -> bool:
    """Whether a column is one half of a pair."""
    assignments = model.columns[column].assignments
    return len(assignments) == 1 and assignments[0].prescription.paired


def option_of(model: LinearModel, column: int) -> Prescription:
    return model.columns[column].assignments[0].prescription


def match(model: LinearModel, group: int, halves: list[int]) -> None:
    """Rows that any matching of these halves into pairs keeps: the shares that one partner at most can have."""
    resolved = model.resolved
    pairs = model.variable(4 * len(model.groups[group].days))
    lifts = {j: model.exercise(model.columns[j].assignments[0].cls) for j in halves}
    model.constrain("pair-fit", combined(dict.fromkeys(halves, 1), {pairs: -2}), low=0, high=0)

    def once(wanted: Callable[[Exercise], int]) -> None:
        weighed = {j: wanted(e) for j, e in lifts.items()}
        model.constrain("pair-fit", combined(weighed, {pairs: -2}), high=0)

    for muscle in resolved.muscles:
        once(lambda e, m=muscle: 2 if m in e.direct else 1 if m in e.muscles else 0)
    once(lambda e: 2 if e.grip_limited else 0)
    once(lambda e: 2 if places(resolved, e, "fixed") else 0)
    for region in REGIONS:
        once(lambda e, r=region: 2 if e.region == r and r in ("push", "pull") else 0)
    partners(model, halves)


def post(model: LinearModel) -> None:
    for group in model.groups:
        halves = [j for j in model.by_group[group.index] if half(model, j)]
        for turn in sorted({(option_of(model, j).sets, option_of(model, j).rest) for j in halves}):
            mine = [j for j in halves if (option_of(model, j).sets, option_of(model, j).rest) == turn]
            match(model, group.index, mine)


def partners(model: LinearModel, halves: list[int]) -> None:
    """No family of classes that do not fit one another has more halves than the classes that fit some of them."""
    classes: dict[int, list[int]] = {}
    for j in halves:
        classes.setdefault(model.columns[j].assignments[0].cls, []).append(j)
    mates = {cls: {other for other in classes if model.instance.fit(cls, other)} for cls in classes}
    for family in families(mates, model):
        fitting = sorted(set().union(*(mates[cls] for cls in family)))
        mine = {j: 1 for cls in family for j in classes[cls]}
        theirs = {j: -1 for other in fitting for j in classes[other]}
        model.constrain("pair-fit", combined(mine, theirs), high=0)


def families(mates: Mapping[int, set[int]], model: LinearModel) -> list[list[int]]:
    """Each class alone, and the classes that share what no pair may: a prime mover, grip, a fixed station, a region."""
    resolved, classes = model.resolved, sorted(mates)
    kinds: list[Callable[[Exercise], bool]] = [
        lambda e: e.grip_limited,
        lambda e: bool(places(resolved, e, "fixed")),
        *(lambda e, r=region: e.region == r for region in ("push", "pull")),
        *(lambda e, m=muscle: m in e.direct for muscle in resolved.muscles),
    ]
    found = [[cls] for cls in classes]
    for kind in kinds:
        family = [cls for cls in classes if kind(model.exercise(cls))]
        if len(family) > 1 and all(mates[cls].isdisjoint(family) for cls in family):
            found.append(family)
    return found
