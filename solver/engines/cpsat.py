"""CP-SAT over a linear model, whole or with some columns fixed; every cost rounded outward to integers."""

from __future__ import annotations

import math
from collections.abc import Callable, Iterable, Mapping
from dataclasses import dataclass
from typing import Any

from ortools.sat.python import cp_model

from setwright.solver.engines.cpsat_curves import CurveVariables, sums
from setwright.solver.evaluation.finding import ClashMember
from setwright.solver.linear.linear_model import Constraint, LinearModel

WORKERS = 1
SEED = 7
SHORTFALL = 1000
"""What one unit that a constraint lacks weighs beside the weights of columns."""


@dataclass(frozen=True)
class CpSatResult:
    """What one CP-SAT run found: the columns in use, its own objective and bound, and its status's name."""

    columns: frozenset[int] | None
    value: float
    bound: float
    status: str


class CpSatModel:
    """A linear model in CP-SAT's form over its open columns."""

    def __init__(
        self,
        model: LinearModel,
        fixed: Mapping[int, int] | None = None,
        only: frozenset[int] | None = None,
        skip: Callable[[ClashMember], bool] | None = None,
        feasibility_only: bool = False,
        assumptions: bool = False,
    ) -> None:
        """`fixed` columns are held at a value and folded into the constraints; of the others those of `only` are open.

        `skip` leaves constraints out by their clash member, `feasibility_only` the objective; with `assumptions` each
        member's constraints hold under a literal of its own, so that `core` can name members.
        """
        self.model = model
        self.assumptions = assumptions
        self.fixed = dict(fixed or {})
        self.cp = cp_model.CpModel()
        count = len(model.columns)
        self.variables: dict[int, Any] = {}
        for j in range(len(model.low)):
            if j in self.fixed or (only is not None and j < count and j not in only):
                continue
            high = max(model.high[j], model.low[j])
            self.variables[j] = self.cp.new_int_var(model.low[j], high, "")
        self.literals: dict[ClashMember, Any] = {}
        """Clash member -> the assumption literal under which its constraints hold."""
        for constraint in model.constraints:
            if skip is None or not skip(constraint.member):
                self._post(constraint)
        self.constant = 0
        self.objective = 0 if feasibility_only else self._objective()

    def _split(self, index: Any, coefficient: Any) -> tuple[list[Any], list[int], int]:
        """The open variables of an expression, their coefficients, and the constant of the fixed ones."""
        variables, values, constant = [], [], 0
        for j, v in zip(index, coefficient, strict=True):
            if j in self.variables:
                variables.append(self.variables[j])
                values.append(v)
            elif j in self.fixed:
                constant += v * self.fixed[j]
        return variables, values, constant

    def _post(self, constraint: Constraint) -> None:
        low, high, member = constraint.low, constraint.high, constraint.member
        variables, values, constant = self._split(constraint.index, constraint.coefficient)
        if not variables:
            if (low is not None and constant < low) or (high is not None and constant > high):
                self._held(self.cp.add_bool_or([]), member)
            return
        least = cp_model.INT_MIN if low is None else low - constant
        most = cp_model.INT_MAX if high is None else high - constant
        self._held(self.cp.add_linear_constraint(sums(variables, values), least, most), member)

    def _held(self, constraint: Any, member: ClashMember) -> None:
        """With assumptions, hold a constraint only as long as its member's literal is true."""
        if self.assumptions:
            if member not in self.literals:
                self.literals[member] = self.cp.new_bool_var("")
            constraint.only_enforce_if(self.literals[member])

    def _objective(self) -> Any:
        variables, values, constant = [], [], 0
        for j, objective in enumerate(self.model.objective):
            whole = math.ceil(objective - 1e-9)
            if whole and j in self.variables:
                variables.append(self.variables[j])
                values.append(whole)
            elif whole and j in self.fixed:
                constant += whole * self.fixed[j]
        for curve in self.model.curves:
            variables.append(CurveVariables(self.cp, self.model, self._split).post(curve))
            values.append(1)
        self.constant = constant
        return sums(variables, values)

    def hint(self, columns: frozenset[int]) -> None:
        """Start from a week: every open column hinted, in use or not."""
        self.cp.clear_hints()  # type: ignore[no-untyped-call]
        for j, variable in self.variables.items():
            if j < len(self.model.columns):
                self.cp.add_hint(variable, 1 if j in columns else 0)

    def maximise(self) -> None:
        """Seek the best score."""
        self.cp.maximize(self.objective)

    def minimise(self, expression: Mapping[int, int], floor: int) -> None:
        """Seek the least of an expression over weeks whose score is no less than `floor` score units."""
        self.cp.add(self.objective >= floor - self.constant)
        variables, values, _ = self._split(tuple(expression), tuple(expression.values()))
        self.cp.minimize(sums(variables, values))

    def minimise_shortfall(self, constraints: Iterable[Constraint], weights: Mapping[int, int]) -> None:
        """Seek the least sum by which constraints, left out until now, fall below their lower ends.

        Among equal sums the least sum of the `weights` of columns in use, which must stay below `SHORTFALL`.
        """
        lacking = []
        for constraint in constraints:
            variables, values, constant = self._split(constraint.index, constraint.coefficient)
            least = (constraint.low or 0) - constant
            lacking.append(self.cp.new_int_var(0, max(0, least), ""))
            self.cp.add_linear_constraint(sums([*variables, lacking[-1]], [*values, 1]), least, cp_model.INT_MAX)
        variables, values, _ = self._split(tuple(weights), tuple(weights.values()))
        self.cp.minimize(sums([*lacking, *variables], [*[SHORTFALL] * len(lacking), *values]))

    def solve(
        self,
        work: float,
        seconds: float,
        heard: Callable[[frozenset[int]], None] | None = None,
        presolve: bool = True,
    ) -> CpSatResult:
        """Run for so much deterministic time or `seconds` of wall clock; `heard` gets each better week's columns."""
        solver = solver_of(work, seconds)
        solver.parameters.cp_model_presolve = presolve
        status = solver.solve(self.cp, _Heard(self, heard) if heard else None)
        name = str(solver.status_name(status))
        known = status in (cp_model.OPTIMAL, cp_model.FEASIBLE)
        columns = self.chosen(solver.value) if known else None
        value = solver.objective_value + self.constant if known else -math.inf
        return CpSatResult(columns, value, solver.best_objective_bound + self.constant, name)

    def core(self, work: float, seconds: float) -> frozenset[ClashMember] | None:
        """Members whose assumptions cannot all hold, not always the fewest; None where none were shown."""
        self.cp.add_assumptions(list(self.literals.values()))
        solver = solver_of(work, seconds)
        if solver.solve(self.cp) != cp_model.INFEASIBLE:
            return None
        blamed = set(solver.sufficient_assumptions_for_infeasibility())
        return frozenset(member for member, literal in self.literals.items() if literal.index in blamed)

    def chosen(self, value: Callable[[Any], int]) -> frozenset[int]:
        """The columns in use, fixed ones included."""
        count = len(self.model.columns)
        mine = {j for j, v in self.variables.items() if j < count and value(v)}
        return frozenset(mine | {j for j, v in self.fixed.items() if j < count and v})


def solver_of(work: float, seconds: float) -> cp_model.CpSolver:
    """A solver of one worker and one seed that ends by its deterministic time; `seconds` is a wall-clock limit."""
    solver = cp_model.CpSolver()
    parameters = solver.parameters
    parameters.num_workers = WORKERS
    parameters.random_seed = SEED
    parameters.linearization_level = 2
    parameters.max_deterministic_time = work
    parameters.max_time_in_seconds = seconds
    parameters.catch_sigint_signal = False
    return solver


class _Heard(cp_model.CpSolverSolutionCallback):
    def __init__(self, program: CpSatModel, heard: Callable[[frozenset[int]], None]) -> None:
        super().__init__()
        self.program = program
        self.heard = heard

    def on_solution_callback(self) -> None:
        self.heard(self.program.chosen(self.value))
