"""Drop sets and rest-pause sets a day."""

from __future__ import annotations

from setwright.solver.linear.linear_model import Sheet
from setwright.solver.rules.technique_cap import most_techniques


def post(sheet: Sheet) -> None:
    most = most_techniques(sheet.terms)
    for cell in sheet.cells:
        found = sheet.total(lambda e, o: 1 if o.technique != "straight" else 0, cell.index)
        sheet.at_most_a_day("technique-cap", found, most, cell.index)
