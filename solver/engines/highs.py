"""HiGHS over a sheet: its linear relaxation, and a bound by a fixed number of nodes."""

from __future__ import annotations

import math
from collections.abc import Callable, Collection, Mapping
from dataclasses import dataclass, replace
from typing import Any

import highspy
import numpy as np

from setwright.solver.linear.linear_model import Sheet
from setwright.solver.engines.stimulus import (
    SET,
    least_sets,
    session_tangents,
    week_intercept,
    week_points,
    week_slope,
)

SAFETY = 1e-5
"""Relative slack for HiGHS's floating bound."""
ROUNDING = 25.0
"""Score units: the audit rounds each of some forty findings to a whole unit, half a unit at most each."""


HEURISTICS = ("feasibility_jump", "rins", "rens", "root_reduced_cost")
"""HiGHS's own searches for a solution, left out where only the bound is wanted."""

TRUSTED = (
    highspy.HighsModelStatus.kOptimal,
    highspy.HighsModelStatus.kInfeasible,
    highspy.HighsModelStatus.kTimeLimit,
    highspy.HighsModelStatus.kIterationLimit,
    highspy.HighsModelStatus.kSolutionLimit,
    highspy.HighsModelStatus.kInterrupt,
)
"""Ends after which HiGHS's dual bound holds."""


@dataclass(frozen=True)
class Relaxed:
    """The linear relaxation: its value (score units) and each column's reduced cost (0 for those in use)."""

    value: float
    reduced: tuple[float, ...]
    amounts: tuple[float, ...]


@dataclass(frozen=True)
class Bounded:
    """What branching proved and found: a bound, a raw solution's value and amounts, and whether it closed."""

    bound: float
    value: float
    amounts: tuple[float, ...] | None
    closed: bool
    infeasible: bool
    nodes: int


class Matrix:
    """A sheet with its curves as tangents, in HiGHS's form."""

    def __init__(self, sheet: Sheet) -> None:
        self.sheet = sheet
        self.cost = [float(w) for w in sheet.worth]
        self.low = [float(v) for v in sheet.low]
        self.high = [float(v) for v in sheet.high]
        self.integer = list(sheet.integer)
        self.rows: list[tuple[dict[int, float], float, float]] = []
        inf = highspy.kHighsInf
        for row in sheet.rows:
            coefficients = dict(zip(row.index, map(float, row.coefficient), strict=True))
            low = -inf if row.low is None else float(row.low)
            self.rows.append((coefficients, low, inf if row.high is None else float(row.high)))
        for curve in sheet.curves:
            self._curve(curve)

    def _variable(self, cost: float, high: float) -> int:
        self.cost.append(cost)
        self.low.append(0.0)
        self.high.append(high)
        self.integer.append(False)
        return len(self.cost) - 1

    def _curve(self, curve: Any) -> None:
        """u <= tangents of the week's curve over the sum of each cell's h <= tangents of the session's."""
        sheet, inf = self.sheet, highspy.kHighsInf
        curves = sheet.terms.curves
        worth = self._variable(1.0, inf)
        weekly = self._variable(0.0, curve.most)
        total = {weekly: 1.0}
        for cell, found in curve.cells:
            good = self._variable(0.0, inf)
            total[good] = -1.0
            days, constant = sheet.size(cell)
            for tangent in session_tangents(curves):
                coefficients = {j: -tangent.slope * amount / SET for j, amount in found}
                coefficients[good] = 1.0
                for j, v in days.items():
                    coefficients[j] = coefficients.get(j, 0.0) - tangent.at * v
                self.rows.append((coefficients, -inf, tangent.at * constant))
        self.rows.append((total, -inf, 0.0))
        least = least_sets(sheet, curve)
        self.rows.append(({worth: 1.0, weekly: -curve.weight * curves.index(least) / least}, -inf, 0.0))
        for point in week_points(least, curve.most):
            slope = week_slope(curves, curve.weight, point)
            at = week_intercept(curves, curve.weight, slope)
            self.rows.append(({worth: 1.0, weekly: -slope}, -inf, at))

    def program(self, relaxed: bool) -> Any:
        """The matrix as a HiGHS model to be maximised."""
        lp = highspy.HighsLp()
        lp.num_col_, lp.num_row_ = len(self.cost), len(self.rows)
        lp.col_cost_ = np.array(self.cost)
        lp.col_lower_, lp.col_upper_ = np.array(self.low), np.array(self.high)
        lp.row_lower_ = np.array([low for _, low, _ in self.rows])
        lp.row_upper_ = np.array([high for _, _, high in self.rows])
        starts, index, value = [0], [], []
        for coefficients, _, _ in self.rows:
            for j in sorted(coefficients):
                index.append(j)
                value.append(coefficients[j])
            starts.append(len(index))
        lp.a_matrix_.format_ = highspy.MatrixFormat.kRowwise
        lp.a_matrix_.start_ = np.array(starts, np.int32)
        lp.a_matrix_.index_ = np.array(index, np.int32)
        lp.a_matrix_.value_ = np.array(value, float)
        lp.sense_ = highspy.ObjSense.kMaximize
        kinds = highspy.HighsVarType
        lp.integrality_ = [kinds.kInteger if whole and not relaxed else kinds.kContinuous for whole in self.integer]
        return lp


def solver(matrix: Matrix, relaxed: bool) -> Any:
    """A silent one-thread HiGHS holding the matrix."""
    highs: Any = highspy.Highs()  # type: ignore[no-untyped-call]
    highs.silent()
    highs.setOptionValue("threads", 1)
    highs.setOptionValue("random_seed", 1)
    highs.passModel(matrix.program(relaxed))
    return highs


def relax(sheet: Sheet) -> Relaxed:
    """The sheet's linear relaxation."""
    highs = solver(Matrix(sheet), relaxed=True)
    highs.run()
    solution = highs.getSolution()
    count = len(sheet.columns)
    if highs.getModelStatus() != highspy.HighsModelStatus.kOptimal:
        return Relaxed(math.inf, (0.0,) * count, (0.0,) * count)
    reduced = tuple(round(float(v), 6) for v in solution.col_dual[:count])
    amounts = tuple(round(float(v), 6) for v in solution.col_value[:count])
    return Relaxed(highs.getInfo().objective_function_value, reduced, amounts)


def bound(
    sheet: Sheet,
    nodes: int,
    seconds: float,
    tell: Callable[[float], None] | None = None,
    cancelled: Callable[[], bool] = lambda: False,
    proving: bool = False,
    restarts: bool = False,
    start: Collection[int] | None = None,
) -> Bounded:
    """The bound after so many nodes; `seconds` is a net, `tell` hears the bound as it falls, `cancelled` ends it.

    `proving` looks for no solution, only for the bound: half the time or less. `restarts` lets HiGHS begin its root
    anew, which pays only where the bound is all but closed there. `start` are the columns of a solution at hand.
    """
    return branched(Matrix(sheet), nodes, seconds, tell, cancelled, proving, restarts, start)


def least(
    sheet: Sheet,
    amounts: Mapping[int, int],
    floor: float,
    nodes: int,
    seconds: float,
    cancelled: Callable[[], bool] = lambda: False,
) -> Bounded:
    """What a sum cannot fall below in weeks of at least `floor` score units: `bound` and `value` are minus the sum."""
    matrix = Matrix(sheet)
    score = {j: cost for j, cost in enumerate(matrix.cost) if cost}
    matrix.rows.append((score, floor - ROUNDING - SAFETY * abs(floor), highspy.kHighsInf))
    matrix.cost = [-float(amounts.get(j, 0)) for j in range(len(matrix.cost))]
    found = branched(matrix, nodes, seconds, None, cancelled)
    # What the audit may round is in the floor already.
    return replace(found, bound=found.bound - ROUNDING)


def branched(
    matrix: Matrix,
    nodes: int,
    seconds: float,
    tell: Callable[[float], None] | None,
    cancelled: Callable[[], bool],
    proving: bool = False,
    restarts: bool = False,
    start: Collection[int] | None = None,
) -> Bounded:
    """How branching on a matrix ended."""
    count = len(matrix.sheet.columns)
    highs = solver(matrix, relaxed=False)
    highs.setOptionValue("mip_max_nodes", nodes)
    highs.setOptionValue("mip_rel_gap", 1e-5)
    highs.setOptionValue("time_limit", float(seconds))
    highs.setOptionValue("mip_allow_restart", restarts)
    for heuristic in HEURISTICS if proving else ():
        highs.setOptionValue(f"mip_heuristic_run_{heuristic}", False)
    if start is not None:
        amounts = np.zeros(count)
        amounts[sorted(start)] = 1.0
        highs.setSolution(count, np.arange(count, dtype=np.int32), amounts)

    faults: list[BaseException] = []

    def heard(event: Any) -> None:
        try:
            if tell is not None:
                tell(event.data_out.mip_dual_bound)
            if cancelled():
                event.interrupt()
        except BaseException as fault:
            # HiGHS would end without a word, its figures half made.
            faults.append(fault)
            event.interrupt()

    highs.cbMipInterrupt += heard
    ran = highs.run()
    if faults:
        raise faults[0]
    info, status = highs.getInfo(), highs.getModelStatus()
    kinds = highspy.HighsModelStatus
    found = info.primal_solution_status == highspy.SolutionStatus.kSolutionStatusFeasible
    trusted = ran != highspy.HighsStatus.kError and status in TRUSTED
    return Bounded(
        bound=outward(info.mip_dual_bound) if trusted else math.inf,
        value=info.objective_function_value if found else -math.inf,
        amounts=tuple(float(v) for v in highs.getSolution().col_value[:count]) if found else None,
        closed=status == kinds.kOptimal,
        infeasible=status == kinds.kInfeasible,
        nodes=int(info.mip_node_count),
    )


def outward(value: float) -> float:
    """A floating bound moved to the safe side."""
    return value + SAFETY * abs(value) + ROUNDING if math.isfinite(value) else math.inf
