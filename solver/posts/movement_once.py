"""One exercise of a movement a day, or two."""

from __future__ import annotations

from setwright.solver.linear.linear_model import Sheet
from setwright.solver.rules.movement_once import most_of_movement


def post(sheet: Sheet) -> None:
    movements = sorted({slot.movement for slot in sheet.terms.catalogue.slots.values()})
    for cell in sheet.cells:
        for movement in movements:
            found = sheet.count(lambda e, m=movement: e.movement == m, cell.index)
            if found:
                most = most_of_movement(sheet.terms, movement, sheet.day(cell.index))
                sheet.at_most_a_day("movement-once", found, most, cell.index)
