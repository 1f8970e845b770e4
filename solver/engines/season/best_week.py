"""CP-SAT over one week of a season: the best week of a block with given muscles specialised."""

from __future__ import annotations

from collections.abc import Collection

from ortools.sat.python import cp_model

from setwright.solver.engines.cpsat import solver_of
from setwright.solver.engines.season.problem import Room, SeasonProblem, WeekPlan
from setwright.solver.engines.season.stopped_run import run
from setwright.solver.engines.season.week_program import WeekProgram
from setwright.solver.engines.stopped import Stopped, unstopped

WEEK_WORK = 0.2
"""Deterministic time of one week, about a second each on a usual core."""
WEEK_GAP = 0.001
"""The share of a week's worth within which nothing better is sought."""
WALL_SECONDS = 60.0
"""A wall-clock limit far above what the work usually takes."""


def best_week(
    problem: SeasonProblem,
    room: Room,
    specialised: Collection[int],
    not_held: Collection[int] = (),
    stopped: Stopped = unstopped,
) -> WeekPlan:
    """The best week found with just these muscles specialised, and none of `not_held` held; raises StoppedRun."""
    program = WeekProgram(problem, room)
    limits = program.limits(specialised, not_held)
    cp = cp_model.CpModel()
    variables = [
        cp.new_int_var(*limits.get(j, (low, high)), "")
        for j, (low, high) in enumerate(zip(program.low, program.high, strict=True))
    ]
    for coefficients, low, high in program.rows:
        row = cp_model.LinearExpr.weighted_sum([variables[j] for j in coefficients], list(coefficients.values()))
        least = cp_model.INT_MIN if low is None else low
        cp.add_linear_constraint(row, least, cp_model.INT_MAX if high is None else high)
    cp.maximize(cp_model.LinearExpr.weighted_sum(variables, program.gain))
    solver = solver_of(WEEK_WORK, WALL_SECONDS)
    solver.parameters.relative_gap_limit = WEEK_GAP
    status = run(solver, cp, stopped)
    if status not in (cp_model.OPTIMAL, cp_model.FEASIBLE):
        raise RuntimeError(f"CP-SAT found no week of a season: {solver.status_name(status)}")
    return WeekPlan(
        emphases=tuple(
            next(e for e, j in emphases.items() if solver.value(variables[j])) for emphases in program.emphases
        ),
        half_sets=tuple(solver.value(variables[j]) for j in program.half_sets),
        activity_sets=tuple(solver.value(variables[j]) for j in program.activities),
        worth=round(solver.objective_value),
        bound=int(solver.best_objective_bound + 0.5),
    )
