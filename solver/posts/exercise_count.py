"""Exercises a day."""

from __future__ import annotations

from setwright.solver.linear.linear_model import Sheet
from setwright.solver.rules.exercise_count import most_exercises


def post(sheet: Sheet) -> None:
    for cell in sheet.cells:
        most = most_exercises(sheet.terms, sheet.day(cell.index))
        sheet.at_most_a_day("exercise-count", sheet.count(lambda e: True, cell.index), most, cell.index)
