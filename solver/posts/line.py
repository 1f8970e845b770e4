"""A line on the card."""

from __future__ import annotations

from setwright.solver.linear.linear_model import Sheet


def post(sheet: Sheet) -> None:
    sheet.charge("line", sheet.count(lambda e: True), sheet.terms.cost("line"))
