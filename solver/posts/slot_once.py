"""One exercise of a slot a day."""

from __future__ import annotations

from setwright.solver.linear.linear_model import Sheet


def post(sheet: Sheet) -> None:
    for cell in sheet.cells:
        for slot in sheet.terms.catalogue.slots:
            found = sheet.count(lambda e, s=slot: e.slot.id == s, cell.index)
            if found:
                sheet.at_most_a_day("slot-once", found, 1, cell.index)
