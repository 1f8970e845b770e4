"""What the client likes."""

from __future__ import annotations

from setwright.solver.linear.linear_model import Sheet
from setwright.solver.rules.liked import applies


def post(sheet: Sheet) -> None:
    terms = sheet.terms
    for cell in sheet.cells:
        day = sheet.board.terms.days[cell.days[0]]
        found = sheet.total(lambda e, o, d=day: 1 if applies(terms, e, o.sets, d) else 0, cell.index)
        sheet.charge("liked", found, -terms.cost("liked"))
