"""A session of a short week without push, pull or lower work."""

from __future__ import annotations

from setwright.solver.linear.linear_model import Sheet, combined
from setwright.solver.rules.full_session import REGIONS, owed


def post(sheet: Sheet) -> None:
    due = owed(sheet.terms)
    for cell in sheet.cells:
        for region in REGIONS:
            if any(day.index in cell.days and r == region for day, r in due):
                trained = sheet.regions.get((region, cell.index), {})
                missing = sheet.slack("full-session", len(cell.days), sheet.terms.cost("full-session"))
                sheet.at_least_a_day("full-session", combined(trained, {missing: 1}), 1, cell.index)
