"""Weekly sets above the band: none of a muscle's own work, and a cost for what shared lifts bring."""

from __future__ import annotations

from collections.abc import Iterator

from setwright.solver.evaluation.evaluated_week import WHOLE, EvaluatedWeek
from setwright.solver.evaluation.finding import Finding
from setwright.solver.evaluation.resolving import WIDE_OPEN
from setwright.solver.linear.linear_model import LinearModel, combined
from setwright.solver.linear.rule import Rule
from setwright.solver.linear.weekly_sets import grain_of, sets_of


def check_own_work(evaluated: EvaluatedWeek) -> Iterator[Finding]:
    """A finding for each muscle above its band that still has an exercise of its own."""
    for muscle in evaluated.resolved.muscles.values():
        sets = evaluated.weekly_sets(muscle.id) / WHOLE
        if sets <= muscle.high or muscle.exact_high:
            continue
        own = [line for line in evaluated.lines if evaluated.resolved.own_muscle(line.exercise) == muscle.id]
        if own:
            yield Finding("band-top", subject=muscle.id, amount=sets, limit=muscle.high, exercise=own[0].exercise.id)


def check_excess(evaluated: EvaluatedWeek) -> Iterator[Finding]:
    """A finding for each muscle above its band."""
    for muscle in evaluated.resolved.muscles.values():
        sets = evaluated.weekly_sets(muscle.id) / WHOLE
        if sets > muscle.high and not muscle.exact_high:
            cost = evaluated.resolved.penalty("band-high", sets - muscle.high)
            yield Finding("band-high", cost, subject=muscle.id, amount=sets, limit=muscle.high)


def post(model: LinearModel) -> None:
    """Charge each set above a band, and forbid a muscle's own exercises where there is one."""
    resolved = model.resolved
    for muscle in resolved.muscles.values():
        if muscle.exact_high or muscle.high >= WIDE_OPEN:
            continue
        found = sets_of(model, muscle.id)
        high = round(muscle.high * WHOLE)
        most = round(resolved.day_cap * WHOLE) * len(resolved.days)
        if sum(v * model.high[j] for j, v in found.items()) <= high or most <= high:
            continue
        grain = grain_of(found, high)
        cost = 0.0 if resolved.off("band-high") else resolved.cost("band-high") * grain / WHOLE
        room = (most - high) // grain + 1
        over = model.violation("band-high", room, cost)
        model.constrain("band-high", combined(found, {over: -grain}), high=high)
        own = [part for group in model.groups for part in _own_work(model, muscle.id, group.index)]
        if own and not resolved.off("band-top"):
            works = model.variable(1)
            for columns, most_uses in own:
                model.constrain("band-top", {**dict.fromkeys(columns, 1), works: -most_uses}, high=0)
            model.constrain("band-top", {over: 1, works: room}, high=room)


def _own_work(model: LinearModel, muscle: str, group: int) -> list[tuple[list[int], int]]:
    """Columns of a group of days that are there for a muscle, by slot, and how many of each slot it can hold."""
    resolved = model.resolved
    found: dict[object, list[int]] = {}
    for j in model.count(lambda e: resolved.own_muscle(e) == muscle, group):
        for exercise in (model.exercise(a.cls) for a in model.columns[j].assignments):
            if resolved.own_muscle(exercise) == muscle:
                slot = (j, exercise.slot.id) if resolved.off("slot-once") else exercise.slot.id
                found.setdefault(slot, []).append(j)
    days = len(model.groups[group].days)
    return [(columns, model.high[columns[0]] if len(columns) == 1 else days) for columns in found.values()]


def post_with_band_top(model: LinearModel) -> None:
    """Post nothing: the cost of sets above a band is posted with the band's top."""


RULES = (
    Rule(
        id="band-top",
        kind="hard",
        scope="planned weeks",
        sentence="A muscle above its band of weekly sets has no exercise that trains it alone.",
        remedy="cut its sets",
        post=post,
        check=check_own_work,
        says="{subject}: {sets} above {limit}, yet {exercise} is in the week",
        always=True,
    ),
    Rule(
        id="band-high",
        kind="scored",
        sentence="A muscle should stay within the upper end of its band of weekly sets, also by lifts that it shares.",
        remedy="swap a shared lift for one that spares it",
        post=post_with_band_top,
        check=check_excess,
        says="{subject}: {sets}, band up to {limit}",
    ),
)
