"""Load on the spine in a day."""

from __future__ import annotations

from setwright.solver.linear.linear_model import Sheet


def post(sheet: Sheet) -> None:
    most = int(sheet.terms.limit("axial-load"))
    for cell in sheet.cells:
        found = sheet.total(lambda e, o: o.sets * e.axial, cell.index)
        sheet.at_most_a_day("axial-load", found, most, cell.index)
