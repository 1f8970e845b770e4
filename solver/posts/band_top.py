"""No work of its own for a muscle above its band; excess from shared lifts costs."""

from __future__ import annotations

from setwright.solver.evaluation.evaluated_week import WHOLE
from setwright.solver.evaluation.resolving import WIDE_OPEN
from setwright.solver.linear.linear_model import LinearModel, combined
from setwright.solver.linear.weekly_sets import grain_of, sets_of


def post(model: LinearModel) -> None:
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
        own = [part for group in model.groups for part in own_work(model, muscle.id, group.index)]
        if own and not resolved.off("band-top"):
            works = model.variable(1)
            for columns, most_uses in own:
                model.constrain("band-top", {**dict.fromkeys(columns, 1), works: -most_uses}, high=0)
            model.constrain("band-top", {over: 1, works: room}, high=room)


def own_work(model: LinearModel, muscle: str, group: int) -> list[tuple[list[int], int]]:
    """Columns of a cell that are there for a muscle, by slot, and how many of each slot the cell can hold."""
    resolved = model.resolved
    found: dict[object, list[int]] = {}
    for j in model.count(lambda e: resolved.own_muscle(e) == muscle, group):
        for exercise in (model.exercise(a.cls) for a in model.columns[j].assignments):
            if resolved.own_muscle(exercise) == muscle:
                slot = (j, exercise.slot.id) if resolved.off("slot-once") else exercise.slot.id
                found.setdefault(slot, []).append(j)
    days = len(model.groups[group].days)
    return [(columns, model.high[columns[0]] if len(columns) == 1 else days) for columns in found.values()]
