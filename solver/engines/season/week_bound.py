"""What weeks of a season can be worth at most, by their linear relaxation in HiGHS."""

from __future__ import annotations

import math
from collections.abc import Sequence
from typing import Any

import highspy
import numpy as np

from setwright.solver.engines.highs_model import give_rows, silent_solver
from setwright.solver.engines.season.problem import Room, SeasonProblem
from setwright.solver.engines.season.week_program import WeekProgram
from setwright.solver.engines.stopped import Stopped, check, unstopped

SAFETY = 1e-6
"""Relative slack for HiGHS's floating bound."""


def week_bounds(
    problem: SeasonProblem, room: Room, patterns: Sequence[tuple[int, ...]], stopped: Stopped = unstopped
) -> list[int]:
    """For each set of specialised muscles, units that no week with this room is worth more than; raises StoppedRun."""
    program = WeekProgram(problem, room)
    highs = _relaxed(program)
    found = []
    for pattern in patterns:
        check(stopped)
        for variable, (low, high) in program.limits(pattern, ()).items():
            highs.changeColBounds(variable, float(low), float(high))
        highs.run()
        if highs.getModelStatus() != highspy.HighsModelStatus.kOptimal:
            raise RuntimeError(f"HiGHS did not solve a season's week: {highs.getModelStatus()}")
        value = highs.getInfo().objective_function_value
        found.append(max(0, math.ceil(value + SAFETY * abs(value))))
    return found


def _relaxed(program: WeekProgram) -> Any:
    """A silent HiGHS of one thread that holds the week with variables that may be fractional."""
    lp, inf = highspy.HighsLp(), highspy.kHighsInf
    lp.num_col_, lp.num_row_ = len(program.gain), len(program.rows)
    lp.col_cost_ = np.array(program.gain, float)
    lp.col_lower_, lp.col_upper_ = np.array(program.low, float), np.array(program.high, float)
    lp.row_lower_ = np.array([-inf if low is None else float(low) for _, low, _ in program.rows])
    lp.row_upper_ = np.array([inf if high is None else float(high) for _, _, high in program.rows])
    give_rows(lp, (coefficients for coefficients, _, _ in program.rows))
    lp.sense_ = highspy.ObjSense.kMaximize
    return silent_solver(lp)
