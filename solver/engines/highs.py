"""HiGHS over a linear model: its linear relaxation, and branch and bound by a fixed number of nodes."""

from __future__ import annotations

import math
from collections.abc import Callable, Collection, Mapping
from dataclasses import dataclass, replace
from itertools import count as count_from
from typing import Any, Literal

import highspy
import numpy as np

from setwright.solver.engines.highs_model import HighsModel
from setwright.solver.linear.linear_model import LinearModel

SAFETY = 1e-5
"""Relative slack for HiGHS's floating bound."""
ROUNDING = 25.0
"""Score units: the audit rounds each of some forty findings to a whole unit, half a unit at most each."""


HEURISTICS = ("feasibility_jump", "rins", "root_reduced_cost", "rens")
"""HiGHS's own searches for a solution."""
Heuristics = Literal["none", "one", "all"]
"""Which of them run: none where only the bound is wanted, one (rens) where a solution comes with it at little cost."""

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
    """What branching proved and found, in score units: a bound moved outward, a raw solution's value and amounts."""

    bound: float
    value: float
    amounts: tuple[float, ...] | None
    """Of every variable of the linear model, its columns first; None where no solution was found."""
    columns: int
    """How many of them are columns."""
    closed: bool
    """Whether it ran to the end: nothing is better than the solution by more than the gap allowed."""
    infeasible: bool
    nodes: int

    @property
    def chosen(self) -> frozenset[int] | None:
        """The columns in use in the solution found; None where none was found."""
        if self.amounts is None:
            return None
        return frozenset(j for j, amount in enumerate(self.amounts[: self.columns]) if amount > 0.5)


def relax(model: LinearModel) -> LinearRelaxation:
    """A model's linear relaxation; its value is inf where HiGHS did not solve it."""
    highs = HighsModel(model).solver(relaxed=True)
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
    heuristics: Heuristics = "all",
    restarts: bool = False,
    start: Collection[int] | None = None,
    looks: int | None = None,
) -> BranchAndBound:
    """The bound after so many nodes; `seconds` is a wall-clock limit.

    `tell` hears the bound as it falls, not moved outward; `cancelled` ends the run early.
    `restarts` lets HiGHS begin its root anew, which pays only where the bound is all but closed there. `start` are the
    columns of a solution at hand. `looks` ends the run when HiGHS has looked so often whether it is to end: the same
    work each time, less than a node where there are few.
    """
    return _branched(HighsModel(model), nodes, seconds, tell, cancelled, heuristics, restarts, start, looks)


def least(
    model: LinearModel,
    amounts: Mapping[int, int],
    floor: float,
    nodes: int,
    seconds: float,
    cancelled: Callable[[], bool] = lambda: False,
    looks: int | None = None,
) -> BranchAndBound:
    """What a sum cannot fall below in weeks of at least `floor` score units: `bound` and `value` are minus the sum."""
    matrix = HighsModel(model)
    score = {j: cost for j, cost in enumerate(matrix.cost) if cost}
    matrix.constraints.append((score, floor - ROUNDING - SAFETY * abs(floor), highspy.kHighsInf))
    matrix.cost = [-float(amounts.get(j, 0)) for j in range(len(matrix.cost))]
    # Measured: the same bound in half the time of all heuristics; without any it takes longest.
    found = _branched(matrix, nodes, seconds, None, cancelled, heuristics="one", looks=looks)
    # What the audit may round is in the floor already.
    return replace(found, bound=found.bound - ROUNDING)


def _branched(
    matrix: HighsModel,
    nodes: int,
    seconds: float,
    tell: Callable[[float], None] | None,
    cancelled: Callable[[], bool],
    heuristics: Heuristics = "all",
    restarts: bool = False,
    start: Collection[int] | None = None,
    looks: int | None = None,
) -> BranchAndBound:
    """How branching on a matrix ended."""
    count = len(matrix.model.columns)
    highs = matrix.solver(relaxed=False)
    highs.setOptionValue("mip_max_nodes", nodes)
    highs.setOptionValue("mip_rel_gap", 1e-5)
    highs.setOptionValue("time_limit", float(seconds))
    highs.setOptionValue("mip_allow_restart", restarts)
    if heuristics != "all":
        highs.setOptionValue("mip_heuristic_effort", 0.0)
        for heuristic in HEURISTICS[:-1] if heuristics == "one" else HEURISTICS:
            highs.setOptionValue(f"mip_heuristic_run_{heuristic}", False)
    if start is not None:
        amounts = np.zeros(count)
        amounts[sorted(start)] = 1.0
        highs.setSolution(count, np.arange(count, dtype=np.int32), amounts)

    faults: list[BaseException] = []
    looked = count_from(1)

    def heard(event: Any) -> None:
        try:
            if tell is not None:
                tell(event.data_out.mip_dual_bound)
            if next(looked) == looks or cancelled():
                event.interrupt()
        except BaseException as fault:
            # HiGHS would swallow the exception and end with its figures half made.
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
        amounts=tuple(float(v) for v in highs.getSolution().col_value[: len(matrix.model.low)]) if found else None,
        columns=count,
        closed=status == kinds.kOptimal,
        infeasible=status == kinds.kInfeasible,
        nodes=int(info.mip_node_count),
    )


def outward(value: float) -> float:
    """A floating bound moved to the safe side."""
    return value + SAFETY * abs(value) + ROUNDING if math.isfinite(value) else math.inf
