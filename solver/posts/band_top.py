"""No work of its own for a muscle above its band; excess from shared lifts costs."""

from __future__ import annotations

from setwright.solver.linear.weekly_sets import grain_of, sets_of
from setwright.solver.linear.linear_model import Sheet, combined
from setwright.solver.evaluation.resolving import WIDE_OPEN
from setwright.solver.evaluation.evaluated_week import WHOLE


def post(sheet: Sheet) -> None:
    terms = sheet.terms
    for muscle in terms.muscles.values():
        if muscle.exact_high or muscle.high >= WIDE_OPEN:
            continue
        found = sets_of(sheet, muscle.id)
        high = round(muscle.high * WHOLE)
        most = round(terms.day_cap * WHOLE) * len(terms.days)
        if sum(v * sheet.high[j] for j, v in found.items()) <= high or most <= high:
            continue
        grain = grain_of(found, high)
        cost = 0.0 if terms.off("band-high") else terms.cost("band-high") * grain / WHOLE
        room = (most - high) // grain + 1
        over = sheet.slack("band-high", room, cost)
        sheet.row("band-high", combined(found, {over: -grain}), high=high)
        own = [part for cell in sheet.cells for part in own_work(sheet, muscle.id, cell.index)]
        if own and not terms.off("band-top"):
            works = sheet.variable(1)
            for columns, most_uses in own:
                sheet.row("band-top", {**dict.fromkeys(columns, 1), works: -most_uses}, high=0)
            sheet.row("band-top", {over: 1, works: room}, high=room)


def own_work(sheet: Sheet, muscle: str, cell: int) -> list[tuple[list[int], int]]:
    """Columns of a cell that are there for a muscle, by slot, and how many of each slot the cell can hold."""
    terms = sheet.terms
    found: dict[object, list[int]] = {}
    for j in sheet.count(lambda e: terms.own_muscle(e) == muscle, cell):
        for exercise in (sheet.exercise(a.cls) for a in sheet.columns[j].atoms):
            if terms.own_muscle(exercise) == muscle:
                slot = (j, exercise.slot.id) if terms.off("slot-once") else exercise.slot.id
                found.setdefault(slot, []).append(j)
    days = len(sheet.cells[cell].days)
    return [(columns, sheet.high[columns[0]] if len(columns) == 1 else days) for columns in found.values()]
