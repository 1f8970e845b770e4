"""HiGHS over a sheet: its linear relaxation, and a bound by a fixed number of nodes."""

from __future__ import annotations

import math
from collections.abc import Callable, Collection, Mapping
from dataclasses import dataclass, replace
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
from setwright.solver.linear.linear_model import LinearModel

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
class LinearRelaxation:
    """The linear relaxation: its value (score units) and each column's reduced cost (0 for those in use)."""

    value: float
    reduced: tuple[float, ...]
    amounts: tuple[float, ...]


@dataclass(frozen=True)
class BranchAndBound:
    """What branching proved and found: a bound, a raw solution's value and amounts, and whether it closed."""

    bound: float
    value: float
    amounts: tuple[float, ...] | None
    closed: bool
    infeasible: bool
    nodes: int

    @property
    def chosen(self) -> frozenset[int] | None:
        """The columns in use in the solution found, each at most once; None where none was found."""
        return None if self.amounts is None else frozenset(j for j, amount in enumerate(self.amounts) if amount > 0.5)


class HighsModel:
    """A sheet with its curves as tangents, in HiGHS's form."""

    def __init__(self, model: LinearModel) -> None:
        self.model = model
        self.cost = [float(w) for w in model.objective]
        self.low = [float(v) for v in model.low]
        self.high = [float(v) for v in model.high]
        self.integer = list(model.integer)
        self.constraints: list[tuple[dict[int, float], float, float]] = []
        inf = highspy.kHighsInf
        for constrain in model.constraints:
            coefficients = dict(zip(constrain.index, map(float, constrain.coefficient), strict=True))
            low = -inf if constrain.low is None else float(constrain.low)
            self.constraints.append((coefficients, low, inf if constrain.high is None else float(constrain.high)))
        for curve in model.curves:
            self._curve(curve)

    def _variable(self, cost: float, high: float) -> int:
        self.cost.append(cost)
        self.low.append(0.0)
        self.high.append(high)
        self.integer.append(False)
        return len(self.cost) - 1

    def _curve(self, curve: Any) -> None:
        """u <= tangents of the week's curve over the sum of each cell's h <= tangents of the session's."""
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

    def program(self, relaxed: bool) -> Any:
        """The matrix as a HiGHS model to be maximised."""
        lp = highspy.HighsLp()
        lp.num_col_, lp.num_row_ = len(self.cost), len(self.constraints)
        lp.col_cost_ = np.array(self.cost)
        lp.col_lower_, lp.col_upper_ = np.array(self.low), np.array(self.high)
        lp.row_lower_ = np.array([low for _, low, _ in self.constraints])
        lp.row_upper_ = np.array([high for _, _, high in self.constraints])
        starts, index, value = [0], [], []
        for coefficients, _, _ in self.constraints:
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


def solver(matrix: HighsModel, relaxed: bool) -> Any:
    """A silent one-thread HiGHS holding the matrix."""
    highs: Any = highspy.Highs()  # type: ignore[no-untyped-call]
    highs.silent()
    highs.setOptionValue("threads", 1)
    highs.setOptionValue("random_seed", 1)
    highs.passModel(matrix.program(relaxed))
    return highs


def relax(model: LinearModel) -> LinearRelaxation:
    """The sheet's linear relaxation."""
    highs = solver(HighsModel(model), relaxed=True)
    highs.run()
    solution = highs.getSolution()
    count = len(model.columns)
    if highs.getModelStatus() != highspy.HighsModelStatus.kOptimal:
        return LinearRelaxation(math.inf, (0.0,) * count, (0.0,) * count)
    reduced = tuple(round(float(v), 6) for v in solution.col_dual[:count])
    amounts = tuple(round(float(v), 6) for v in solution.col_value[:count])
    return LinearRelaxation(highs.getInfo().objective_function_value, reduced, amounts)


def bound(
    model: LinearModel,
    nodes: int,
    seconds: float,
    tell: Callable[[float], None] | None = None,
    cancelled: Callable[[], bool] = lambda: False,
    proving: bool = False,
    restarts: bool = False,
    start: Collection[int] | None = None,
) -> BranchAndBound:
    """The bound after so many nodes; `seconds` is a net, `tell` hears the bound as it falls, `cancelled` ends it.

    `proving` looks for no solution, only for the bound: half the time or less. `restarts` lets HiGHS begin its root
    anew, which pays only where the bound is all but closed there. `start` are the columns of a solution at hand.
    """
    return branched(HighsModel(model), nodes, seconds, tell, cancelled, proving, restarts, start)


def least(
    model: LinearModel,
    amounts: Mapping[int, int],
    floor: float,
    nodes: int,
    seconds: float,
    cancelled: Callable[[], bool] = lambda: False,
) -> BranchAndBound:
    """What a sum cannot fall below in weeks of at least `floor` score units: `bound` and `value` are minus the sum."""
    matrix = HighsModel(model)
    score = {j: cost for j, cost in enumerate(matrix.cost) if cost}
    matrix.constraints.append((score, floor - ROUNDING - SAFETY * abs(floor), highspy.kHighsInf))
    matrix.cost = [-float(amounts.get(j, 0)) for j in range(len(matrix.cost))]
    found = branched(matrix, nodes, seconds, None, cancelled)
    # What the audit may round is in the floor already.
    return replace(found, bound=found.bound - ROUNDING)


def branched(
    matrix: HighsModel,
    nodes: int,
    seconds: float,
    tell: Callable[[float], None] | None,
    cancelled: Callable[[], bool],
    proving: bool = False,
    restarts: bool = False,
    start: Collection[int] | None = None,
) -> BranchAndBound:
    """How branching on a matrix ended."""
    count = len(matrix.model.columns)
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
    return BranchAndBound(
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
