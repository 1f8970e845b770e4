"""Movements that the brief says must be there."""

from __future__ import annotations

from setwright.solver.linear.linear_model import Sheet


def post(sheet: Sheet) -> None:
    for movement in sheet.terms.brief.must:
        found = sheet.count(lambda e, m=movement: e.movement == m)
        sheet.demand("must", f"must {movement}", found, 1)
