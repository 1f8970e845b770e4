"""The master problem: a linear program whose columns are day patterns, beside the variables that rules added."""

from __future__ import annotations

from collections.abc import Callable, Iterable
from dataclasses import dataclass, field
from typing import Any

import highspy
import numpy as np
from numpy.typing import NDArray

from setwright.solver.engines.day_patterns.day_columns import DayColumns
from setwright.solver.engines.day_patterns.pricing import NOTHING, DayPattern
from setwright.solver.engines.highs_model import HighsModel, silent_solver
from setwright.solver.linear.columns import REGIONS, Column
from setwright.solver.linear.linear_model import LinearModel

Floats = NDArray[np.float64]
UNMET = 1e9
"""Score units for each unit by which a constraint is missed that no pattern meets yet; no week of worth pays it."""


@dataclass(frozen=True)
class Prices:
    """The master's optimum in score units: its value, what each variable would add, what a day of each group costs."""

    value: float
    gains: Floats
    days: Floats


@dataclass
class Master:
    """A linear model whose columns and trained regions stand in patterns of days; all else is as it was.

    `days` has one entry for each group of the model, whose columns are those of all entries in order.
    """

    model: LinearModel
    days: tuple[DayColumns, ...]
    patterns: list[tuple[int, DayPattern]] = field(default_factory=list)
    """(group, pattern) in the order in which they were added."""

    def __post_init__(self) -> None:
        matrix = HighsModel(self.model)
        self._cost, self._integer = np.array(matrix.cost), matrix.integer
        entries = [(i, j, v) for i, (row, _, _) in enumerate(matrix.constraints) for j, v in row.items()]
        entries.sort(key=lambda entry: (entry[1], entry[0]))
        self._row = np.array([i for i, _, _ in entries], np.int32)
        self._column = np.array([j for _, j, _ in entries], np.int64)
        self._entry = np.array([v for _, _, v in entries])
        self._closed = np.array(matrix.high) == 0
        self._starts = np.searchsorted(self._column, np.arange(len(self._cost) + 1))
        self._rows = len(matrix.constraints)
        self._region = tuple(self._region_variables(group) for group in range(len(self.days)))
        self._first = np.cumsum([0, *(len(day.columns) for day in self.days)])
        self._highs = self._program(matrix)

    def _region_variables(self, group: int) -> tuple[int | None, ...]:
        """For each region the variable that counts a group's days with it, if it can be trained."""
        found = (self.model.regions.get((region, self.model.groups[group].index)) for region in REGIONS)
        return tuple(next(iter(days)) if days else None for days in found)

    def _program(self, matrix: HighsModel) -> Any:
        """HiGHS with the rows and with the variables that are not in patterns."""
        program: Any = silent_solver(_empty_program())
        nothing: tuple[NDArray[np.int32], Floats] = (np.array([], np.int32), np.array([]))
        for _, low, high in matrix.constraints:
            program.addRow(low, high, 0, *nothing)
        for group in self.model.groups:
            program.addRow(-highspy.kHighsInf, float(len(group.days)), 0, *nothing)
        in_patterns = {j for variables in self._region for j in variables} | set(range(int(self._first[-1])))
        self._beside = [j for j in range(len(self._cost)) if j not in in_patterns]
        for j in self._beside:
            rows, values = self._entries_of(j)
            program.addCol(self._cost[j], matrix.low[j], matrix.high[j], len(rows), rows, values)
        self._slacks = 0
        for i, (_, low, high) in enumerate(matrix.constraints):
            for missed, sign in ((low > 0, 1.0), (high < 0, -1.0)):
                if missed:
                    program.addCol(-UNMET, 0.0, highspy.kHighsInf, 1, np.array([i], np.int32), np.array([sign]))
                    self._slacks += 1
        return program

    def _entries_of(self, j: int) -> tuple[NDArray[np.int32], Floats]:
        """The rows of a variable of the model and its coefficients in them."""
        here = slice(self._starts[j], self._starts[j + 1])
        return self._row[here], self._entry[here]

    def add(self, group: int, pattern: DayPattern) -> None:
        """Take a session of a group of days into the program."""
        variables = [int(self._first[group]) + j for j in pattern.columns]
        trained = (v for k, v in enumerate(self._region[group]) if v is not None and pattern.trained >> k & 1)
        variables += trained
        summed = np.zeros(self._rows + len(self.days))
        for j in variables:
            rows, values = self._entries_of(j)
            summed[rows] += values
        summed[self._rows + group] = 1.0
        rows = np.nonzero(summed)[0].astype(np.int32)
        self._highs.addCol(float(self._cost[variables].sum()), 0.0, highspy.kHighsInf, len(rows), rows, summed[rows])
        self.patterns.append((group, pattern))

    def solve(self) -> Prices | None:
        """The prices at the optimum over the patterns so far; None where HiGHS did not reach it."""
        self._highs.run()
        if self._highs.getModelStatus() != highspy.HighsModelStatus.kOptimal:
            return None
        dual = np.array(self._highs.getSolution().row_dual)
        paid = np.bincount(self._column, weights=self._entry * dual[self._row], minlength=len(self._cost))
        value = float(self._highs.getInfo().objective_function_value)
        return Prices(value, self._cost - paid, dual[self._rows :])

    def choice(self, nodes: int, seconds: float, cancelled: Callable[[], bool]) -> tuple[tuple[int, DayPattern], ...]:
        """The patterns of the best week made of them that HiGHS finds in so many nodes, with repeats; none without one.

        `seconds` is a wall-clock limit. The rules between one day and another are not all in the program.
        """
        if not self.patterns:
            return ()
        program = self._highs
        first = len(self._beside) + self._slacks
        for place, (group, pattern) in enumerate(self.patterns):
            if self._doubled(group, pattern):
                program.changeColBounds(first + place, 0.0, 0.0)
        whole = [*(self._integer[j] for j in self._beside), *(False for _ in range(self._slacks))]
        whole += [True] * len(self.patterns)
        kinds = highspy.HighsVarType
        found = np.array([int(kinds.kInteger if w else kinds.kContinuous) for w in whole], np.uint8)
        program.changeColsIntegrality(len(whole), np.arange(len(whole), dtype=np.int32), found)
        program.setOptionValue("mip_max_nodes", nodes)
        program.setOptionValue("time_limit", float(seconds))
        program.cbMipInterrupt += lambda event: event.interrupt() if cancelled() else None
        program.run()
        if program.getInfo().primal_solution_status != highspy.SolutionStatus.kSolutionStatusFeasible:
            return ()
        amounts = program.getSolution().col_value[-len(self.patterns) :]
        return tuple(
            pattern for pattern, amount in zip(self.patterns, amounts, strict=True) for _ in range(round(amount))
        )

    def _doubled(self, group: int, pattern: DayPattern) -> bool:
        """Whether a session has two exercises of one class, which no session may."""
        classes = [a.cls for column in self.columns_of(group, pattern) for a in column.assignments]
        return len(set(classes)) < len(classes)

    def session(self, group: int, columns: Iterable[Column]) -> DayPattern | None:
        """The pattern of a session's columns, whatever their group of days; None where one is no column of the day."""
        day = self.days[group]
        place = {column.assignments: j for j, column in enumerate(day.columns)}
        wanted = [column.assignments for column in columns]
        if any(assignments not in place for assignments in wanted):
            return None
        held = tuple(sorted(place[assignments] for assignments in wanted))
        return DayPattern(0.0, held, int(np.bitwise_or.reduce(day.trained[list(held)], initial=0)))

    def columns_of(self, group: int, pattern: DayPattern) -> tuple[Column, ...]:
        """The columns of a pattern of a group of days."""
        return tuple(self.days[group].columns[j] for j in pattern.columns)

    def values_of(self, group: int, prices: Prices) -> tuple[Floats, tuple[float, ...]]:
        """What each column of a group and each region trained on a day of it would add; closed columns are out."""
        here = slice(self._first[group], self._first[group + 1])
        values = np.where(self._closed[here], NOTHING, prices.gains[here])
        regions = tuple(0.0 if v is None else float(prices.gains[v]) for v in self._region[group])
        return values, regions


def _empty_program() -> Any:
    """A program without rows or columns, to be maximised."""
    program = highspy.HighsLp()
    program.sense_ = highspy.ObjSense.kMaximize
    return program
