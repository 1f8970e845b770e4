"""A linear model in HiGHS's form, in which the stimulus curves are tangents."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from typing import Any

import highspy
import numpy as np

from setwright.solver.engines.stimulus import (
    SET,
    least_sets,
    session_tangents,
    week_intercept,
    week_points,
    week_slope,
)
from setwright.solver.linear.linear_model import LinearModel, StimulusCurve


class HighsModel:
    """A linear model with its curves as tangents, in HiGHS's form."""

    def __init__(self, model: LinearModel) -> None:
        self.model = model
        self.cost = [float(w) for w in model.objective]
        self.low = [float(v) for v in model.low]
        self.high = [float(v) for v in model.high]
        self.integer = list(model.integer)
        self.constraints: list[tuple[dict[int, float], float, float]] = []
        inf = highspy.kHighsInf
        for constraint in model.constraints:
            coefficients = dict(zip(constraint.index, map(float, constraint.coefficient), strict=True))
            low = -inf if constraint.low is None else float(constraint.low)
            self.constraints.append((coefficients, low, inf if constraint.high is None else float(constraint.high)))
        for curve in model.curves:
            self._curve(curve)

    def _variable(self, cost: float, high: float) -> int:
        self.cost.append(cost)
        self.low.append(0.0)
        self.high.append(high)
        self.integer.append(False)
        return len(self.cost) - 1

    def _curve(self, curve: StimulusCurve) -> None:
        """u <= tangents of the week's curve over the sum of each day group's h <= tangents of the session's."""
        model, inf = self.model, highspy.kHighsInf
        curves = model.resolved.curves
        objective = self._variable(1.0, inf)
        weekly = self._variable(0.0, curve.most)
        total = {weekly: 1.0}
        for group, found in curve.groups:
            good = self._variable(0.0, inf)
            total[good] = -1.0
            days, constant = model.size(group)
            for tangent in session_tangents(curves):
                coefficients = {j: -tangent.slope * amount / SET for j, amount in found}
                coefficients[good] = 1.0
                for j, v in days.items():
                    coefficients[j] = coefficients.get(j, 0.0) - tangent.at * v
                self.constraints.append((coefficients, -inf, tangent.at * constant))
        self.constraints.append((total, -inf, 0.0))
        least = least_sets(model, curve)
        self.constraints.append(({objective: 1.0, weekly: -curve.weight * curves.index(least) / least}, -inf, 0.0))
        for point in week_points(least, curve.most):
            slope = week_slope(curves, curve.weight, point)
            at = week_intercept(curves, curve.weight, slope)
            self.constraints.append(({objective: 1.0, weekly: -slope}, -inf, at))

    def solver(self, relaxed: bool) -> Any:
        """A silent HiGHS of one thread that holds the model; `relaxed` lets every variable be fractional."""
        return silent_solver(self._program(relaxed))

    def _program(self, relaxed: bool) -> Any:
        """The arrays that HiGHS is given, to be maximised."""
        lp = highspy.HighsLp()
        lp.num_col_, lp.num_row_ = len(self.cost), len(self.constraints)
        lp.col_cost_ = np.array(self.cost)
        lp.col_lower_, lp.col_upper_ = np.array(self.low), np.array(self.high)
        lp.row_lower_ = np.array([low for _, low, _ in self.constraints])
        lp.row_upper_ = np.array([high for _, _, high in self.constraints])
        give_rows(lp, (coefficients for coefficients, _, _ in self.constraints))
        lp.sense_ = highspy.ObjSense.kMaximize
        kinds = highspy.HighsVarType
        lp.integrality_ = [kinds.kInteger if whole and not relaxed else kinds.kContinuous for whole in self.integer]
        return lp


def silent_solver(program: Any) -> Any:
    """A silent HiGHS of one thread and one seed that holds a program."""
    highs: Any = highspy.Highs()  # type: ignore[no-untyped-call]
    highs.silent()
    highs.setOptionValue("threads", 1)
    highs.setOptionValue("random_seed", 1)
    highs.passModel(program)
    return highs


def give_rows(program: Any, rows: Iterable[Mapping[int, float]]) -> None:
    """Give a program its rows: the coefficients of each by column, in the order of the columns."""
    starts, index, value = [0], [], []
    for coefficients in rows:
        for j in sorted(coefficients):
            index.append(j)
            value.append(coefficients[j])
        starts.append(len(index))
    program.a_matrix_.format_ = highspy.MatrixFormat.kRowwise
    program.a_matrix_.start_ = np.array(starts, np.int32)
    program.a_matrix_.index_ = np.array(index, np.int32)
    program.a_matrix_.value_ = np.array(value, float)
