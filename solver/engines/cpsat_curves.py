"""The stimulus in CP-SAT: each muscle's concave curves as tangents with whole numbers, rounded outward."""

from __future__ import annotations

import math
from collections.abc import Callable
from dataclasses import dataclass
from typing import Any

from ortools.sat.python import cp_model

from setwright.solver.engines.stimulus import (
    SESSION_POINTS,
    SET,
    least_sets,
    session_intercept,
    week_intercept,
    week_points,
    week_slope,
)
from setwright.solver.linear.linear_model import LinearModel, StimulusCurve

MILLI = 1000
"""Effective sets inside CP-SAT are whole numbers of 1/1000 set."""
FINE = 64
"""Slopes are whole numbers of 1/64 score unit a thousandth of a set."""

sums = cp_model.LinearExpr.weighted_sum
Split = Callable[[Any, Any], tuple[list[Any], list[int], int]]
"""(indices, coefficients) -> the open variables, their coefficients, and the constant of the fixed ones."""


@dataclass(frozen=True)
class CurveVariables:
    """Posts the curves of a linear model on a CP-SAT model that has its columns."""

    cp: cp_model.CpModel
    model: LinearModel
    split: Split

    def post(self, curve: StimulusCurve) -> Any:
        """A variable that is at most the muscle's part of the objective in score units, held under outward tangents."""
        model, cp, curves = self.model, self.cp, self.model.resolved.curves
        goods = []
        for group, found in curve.groups:
            index = [j for j, _ in found]
            rounded = [-(-amount * MILLI // SET) for _, amount in found]
            variables, values, constant = self.split(index, rounded)
            if not variables and not constant:
                continue
            highest = math.ceil(curves.session(model.resolved.day_cap + 2.0) * MILLI) * len(model.groups[group].days)
            good = cp.new_int_var(0, highest, "")
            total = sums(variables, values) + constant
            cp.add(good <= total)
            for point in SESSION_POINTS:
                self._session_tangent(good, total, point, group)
            goods.append(good)
        most = math.ceil(curve.most * MILLI) + 50
        weekly = cp.new_int_var(0, most, "")
        cp.add(weekly <= sum(goods))
        top = math.ceil(curve.weight * curves.index(curve.most + 0.1)) + 1
        objective = cp.new_int_var(0, top, "")
        least = least_sets(model, curve)
        chord = math.ceil(FINE * curve.weight * curves.index(least) / (least * MILLI))
        cp.add(FINE * objective <= chord * weekly)
        for slope in self._slopes(curve, least):
            at = week_intercept(curves, curve.weight, slope * MILLI / FINE)
            cp.add(FINE * objective <= slope * weekly + math.ceil(FINE * at + 1e-6))
        return objective

    def _slopes(self, curve: StimulusCurve, least: float) -> list[int]:
        curves = self.model.resolved.curves
        points = week_points(least, curve.most)
        slopes = {max(1, round(FINE * week_slope(curves, curve.weight, p) / MILLI)) for p in points}
        return sorted(slopes)

    def _session_tangent(self, good: Any, total: Any, point: float, group: int) -> None:
        """Hold a day group's good sets under the session curve's tangent at a number of sets."""
        curves = self.model.resolved.curves
        knee, scale = curves.numbers["session-knee"], curves.numbers["session-scale"]
        if point <= knee:
            return
        slope = round(FINE * math.exp(-(point - knee) / scale))
        at = math.ceil(FINE * MILLI * session_intercept(curves, slope / FINE) + 1e-6)
        days, constant = self.model.size(group)
        size: Any = constant
        if days:
            variables, values, fixed = self.split(tuple(days), tuple(days.values()))
            size = sums(variables, values) + fixed + constant
        self.cp.add(FINE * good <= slope * total + at * size)
