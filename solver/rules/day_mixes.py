"""Rules on what one day should not hold together: each day that does is charged once."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from dataclasses import dataclass
from functools import partial

from setwright.catalogue.entries import Exercise
from setwright.solver.evaluation.evaluated_week import EvaluatedWeek
from setwright.solver.evaluation.finding import Finding
from setwright.solver.evaluation.resolved_brief import ResolvedBrief
from setwright.solver.evaluation.resolved_day import ResolvedDay
from setwright.solver.linear.linear_model import Expression, LinearModel, combined, scaled
from setwright.solver.linear.rule import Rule

Kind = Callable[[Exercise], bool]


@dataclass(frozen=True)
class Mix:
    """A lift that a day should hold only `beside` another kind, or should not hold together with it."""

    rule: str
    lift: Kind
    other: Kind
    beside: bool
    """True: the lift asks for the other kind on its day. False: the two should not meet."""
    applies: Callable[[ResolvedBrief, ResolvedDay], bool] = lambda resolved, day: True


def _split_squat(exercise: Exercise) -> bool:
    return exercise.slot.id == "lunge"


def _squat_or_leg_press(exercise: Exercise) -> bool:
    return exercise.slot.id in ("squat", "leg-press")


def _squats_to_choose(resolved: ResolvedBrief, day: ResolvedDay) -> bool:
    # Where only light dumbbells are at hand, split squats are the first choice.
    return resolved.can(
        day, lambda e: _squat_or_leg_press(e) and resolved.rank(e, day) < 3 and not resolved.light(e, day)
    )


def _hinge(exercise: Exercise) -> bool:
    return exercise.movement == "hinge" and "spinal-erectors" in exercise.muscles


def _unsupported_row(exercise: Exercise) -> bool:
    return exercise.movement == "row" and "spinal-erectors" in exercise.muscles


MIXES = (
    Mix("split-squat-second", _split_squat, _squat_or_leg_press, True, _squats_to_choose),
    Mix("hinge-and-row", _hinge, _unsupported_row, False),
)


def check(mix: Mix, evaluated: EvaluatedWeek) -> Iterator[Finding]:
    """A finding for each day that holds the lift without what it asks for, or with what it should not meet."""
    resolved = evaluated.resolved
    for day, lines in zip(resolved.days, evaluated.on, strict=True):
        if not mix.applies(resolved, day):
            continue
        lift = next((x.exercise.id for x in lines if mix.lift(x.exercise)), None)
        others = tuple(x.exercise.id for x in lines if mix.other(x.exercise))
        if lift is not None and bool(others) != mix.beside:
            yield Finding(mix.rule, resolved.penalty(mix.rule, 1), days=(day.index,), exercise=lift, others=others[:1])


def post(mix: Mix, model: LinearModel) -> None:
    """Charge each such day; exact where the model knows its days, never more than `check` where it does not."""
    for group in model.groups:
        lifts, others = _by_slot(model, mix.lift, group.index), _by_slot(model, mix.other, group.index)
        if not mix.applies(model.resolved, model.day(group.index)) or not lifts or not (others or mix.beside):
            continue
        breach = {model.violation(mix.rule, len(group.days), model.resolved.cost(mix.rule)): -1}
        days, constant = model.size(group.index)
        for lift in lifts:
            if mix.beside:
                model.constrain(mix.rule, combined(lift, scaled(combined(*others), -1), breach), high=0)
                continue
            for other in others:
                model.constrain(mix.rule, combined(lift, other, breach, scaled(days, -1)), high=constant)


def _by_slot(model: LinearModel, wanted: Kind, group: int) -> list[Expression]:
    """The lifts of a kind in parts of which a day holds at most one: a slot's, or each column where a slot may repeat."""
    found = model.count(wanted, group)
    if model.resolved.off("slot-once"):
        return [{j: 1} for j in found]
    slots: dict[str, Expression] = {}
    for j in found:
        for assignment in model.columns[j].assignments:
            exercise = model.exercise(assignment.cls)
            if wanted(exercise):
                slots.setdefault(exercise.slot.id, {})[j] = 1
    return [slots[slot] for slot in sorted(slots)]


def _rule(mix: Mix, sentence: str, remedy: str, says: str) -> Rule:
    return Rule(mix.rule, "scored", sentence, remedy, partial(post, mix), partial(check, mix), says="{day}: " + says)


RULES = (
    _rule(
        MIXES[0],
        "A day with a lunge or split squat should have a squat or leg press too, where one is available.",
        "take a squat or leg press, the split squat second",
        "{exercise} stands without a squat or leg press",
    ),
    _rule(
        MIXES[1],
        "A day with a hinge should have no row that the back holds up.",
        "take a row with the chest or the seat as support",
        "{exercise} and {others} both load the lower back",
    ),
)
