"""A muscle's sets in a day, at most."""

from __future__ import annotations

from setwright.solver.evaluation.evaluated_week import WHOLE
from setwright.solver.linear.linear_model import LinearModel
from setwright.solver.linear.weekly_sets import sets_of


def post(model: LinearModel) -> None:
    most = round(model.resolved.limit("muscle-day-cap") * WHOLE)
    for group in model.groups:
        for muscle in model.resolved.muscles:
            model.at_most_a_day("muscle-day-cap", sets_of(model, muscle, group.index), most, group.index)
