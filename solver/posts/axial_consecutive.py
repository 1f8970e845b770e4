"""Heavy spine loads on consecutive days; exact on days, silent in the week without days."""

from __future__ import annotations

from setwright.solver.linear.linear_model import Sheet


def post(sheet: Sheet) -> None:
    if not sheet.daily:
        return
    terms = sheet.terms
    heavy = terms.limit("axial-consecutive", "axial")
    cost = terms.cost("axial-consecutive")
    loaded: dict[int, int] = {}
    for cell in sheet.cells:
        found = sheet.count(lambda e: e.axial >= heavy, cell.index)
        if found:
            loaded[cell.index] = held = sheet.variable(1)
            for j in found:
                sheet.row("axial-consecutive", {j: 1, held: -1}, high=0)
    for earlier, later in terms.adjacent:
        if earlier in loaded and later in loaded:
            both = sheet.slack("axial-consecutive", 1, cost)
            sheet.row("axial-consecutive", {loaded[earlier]: 1, loaded[later]: 1, both: -1}, high=1)
