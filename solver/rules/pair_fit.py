"""Which two exercises may be done in turn."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping

from setwright.catalogue.entries import Exercise
from setwright.solver.evaluation.evaluated_week import EvaluatedWeek, Line
from setwright.solver.evaluation.finding import Finding
from setwright.solver.evaluation.pairs import MISFITS, Misfit, unfit
from setwright.solver.evaluation.prescriptions import Prescription
from setwright.solver.evaluation.resolved_brief import ResolvedBrief
from setwright.solver.linear.columns import REGIONS
from setwright.solver.linear.linear_model import LinearModel, combined
from setwright.solver.linear.rule import Rule


def misfits(resolved: ResolvedBrief, a: Line, b: Line) -> Iterator[Misfit]:
    """Why two lines may not be a pair."""
    if not resolved.pairs:
        yield Misfit("not-asked")
    if (a.sets, a.entry.rest) != (b.sets, b.entry.rest):
        yield Misfit("out-of-step")
    if b.place != a.place + 1:
        yield Misfit("apart")
    yield from unfit(resolved, a.exercise, b.exercise)


def check(evaluated: EvaluatedWeek) -> Iterator[Finding]:
    """A finding for each reason why two lines may not be a pair, and for each line without its partner."""
    for lines in evaluated.on:
        here = {line.exercise.id: line for line in lines}
        for line in lines:
            partner = line.entry.partner
            if partner is None:
                continue
            days, other = (line.day.index,), here.get(partner)
            if other is None or other.entry.partner != line.exercise.id:
                yield Finding("pair-fit", case="no-partner", days=days, exercise=line.exercise.id, others=(partner,))
            elif line.place < other.place:
                for why in misfits(evaluated.resolved, line, other):
                    named = (why.exercise or partner,)
                    yield Finding("pair-fit", case=why.reason, days=days, exercise=line.exercise.id, others=named)


# ---- on the model: real pairs fit by their columns; halves of pairs are held to what any matching of them keeps


def post(model: LinearModel) -> None:
    """Hold the halves of pairs, by sets and rest, to numbers that can be matched."""
    for group in model.groups:
        halves = [j for j in model.by_group[group.index] if _is_half(model, j)]
        for turn in sorted({_turn(model, j) for j in halves}):
            _match(model, group.index, [j for j in halves if _turn(model, j) == turn])


def _is_half(model: LinearModel, column: int) -> bool:
    assignments = model.columns[column].assignments
    return len(assignments) == 1 and assignments[0].prescription.paired


def _turn(model: LinearModel, column: int) -> tuple[int, int]:
    """The sets and the rest in seconds that both halves of a pair share."""
    prescription: Prescription = model.columns[column].assignments[0].prescription
    return prescription.sets, prescription.rest


def _match(model: LinearModel, group: int, halves: list[int]) -> None:
    """Constraints that any matching of these halves into pairs keeps: the shares that one partner at most can have."""
    resolved = model.resolved
    pairs = model.variable(4 * len(model.groups[group].days))
    lifts = {j: model.exercise(model.columns[j].assignments[0].cls) for j in halves}
    model.constrain("pair-fit", combined(dict.fromkeys(halves, 1), {pairs: -2}), low=0, high=0)

    def at_most_one_partner(weight: Callable[[Exercise], int]) -> None:
        weighed = {j: weight(e) for j, e in lifts.items()}
        model.constrain("pair-fit", combined(weighed, {pairs: -2}), high=0)

    for muscle in resolved.muscles:
        at_most_one_partner(lambda e, m=muscle: 2 if m in e.direct else 1 if m in e.muscles else 0)
    at_most_one_partner(lambda e: 2 if e.grip_limited else 0)
    for region in REGIONS:
        at_most_one_partner(lambda e, r=region: 2 if e.region == r and r in ("push", "pull") else 0)
    _partners(model, halves)


def _partners(model: LinearModel, halves: list[int]) -> None:
    """No family of classes that do not fit one another has more halves than the classes that fit some of them."""
    classes: dict[int, list[int]] = {}
    for j in halves:
        classes.setdefault(model.columns[j].assignments[0].cls, []).append(j)
    mates = {cls: {other for other in classes if model.instance.fit(cls, other)} for cls in classes}
    for family in _families(mates, model):
        fitting = sorted(set().union(*(mates[cls] for cls in family)))
        mine = {j: 1 for cls in family for j in classes[cls]}
        theirs = {j: -1 for other in fitting for j in classes[other]}
        model.constrain("pair-fit", combined(mine, theirs), high=0)


def _families(mates: Mapping[int, set[int]], model: LinearModel) -> list[list[int]]:
    """Each class alone, and the classes that share what no pair may: a prime mover, grip, a region."""
    resolved, classes = model.resolved, sorted(mates)
    kinds: list[Callable[[Exercise], bool]] = [
        lambda e: e.grip_limited,
        *(lambda e, r=region: e.region == r for region in ("push", "pull")),
        *(lambda e, m=muscle: m in e.direct for muscle in resolved.muscles),
    ]
    found = [[cls] for cls in classes]
    for kind in kinds:
        family = [cls for cls in classes if kind(model.exercise(cls))]
        if len(family) > 1 and all(mates[cls].isdisjoint(family) for cls in family):
            found.append(family)
    return found


RULE = Rule(
    id="pair-fit",
    kind="hard",
    sentence="Two exercises are paired only if they have the same sets and rests, do not load the spine, share no prime mover, are not both limited by grip, do not need the same station nor two stations of which there is one each, train different regions or opposing muscles, and tire little; at two places, with a walk between, only a push and a pull or opposing muscles; under the goal efficiency a press and a pull that tire much may be a pair, under growth only single-joint lifts. At a peak hour a pair stays at one place.",
    remedy="pair it with another exercise, or make both straight sets",
    post=post,
    check=check,
    says={
        "no-partner": "{day}: {exercise} has no partner {others}",
        "not-asked": "{day}: {exercise}: pairs were not asked for",
        "out-of-step": "{day}: {exercise}: the two differ in sets or rest",
        "apart": "{day}: {exercise}: the two do not stand one after the other",
        **{reason: "{day}: {exercise}: " + text for reason, text in MISFITS.items()},
    },
)
