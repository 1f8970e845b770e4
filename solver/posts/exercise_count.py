"""Exercises a day."""

from __future__ import annotations

from setwright.solver.linear.linear_model import LinearModel
from setwright.solver.rules.exercise_count import most_exercises


def post(model: LinearModel) -> None:
    for group in model.groups:
        most = most_exercises(model.resolved, model.day(group.index))
        model.at_most_a_day("exercise-count", model.count(lambda e: True, group.index), most, group.index)
