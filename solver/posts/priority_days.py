"""A priority muscle on fewer than two days."""

from __future__ import annotations

from setwright.solver.linear.linear_model import Expression, Sheet, combined
from setwright.solver.rules.priority_days import days_due


def post(sheet: Sheet) -> None:
    terms = sheet.terms
    for muscle in terms.priorities:
        due = days_due(terms, muscle)
        days: Expression = {}
        for cell in sheet.cells:
            found = sheet.count(lambda e, m=muscle: m in e.direct, cell.index)
            if found:
                days[sheet.days_with("priority-days", found, cell.index)] = 1
        short = sheet.slack("priority-days", due, terms.cost("priority-days"))
        sheet.row("priority-days", combined(days, {short: 1}), low=due)
