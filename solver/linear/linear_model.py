"""The neutral linear model: variables, constraints and objective that the rules post, for either engine."""

from __future__ import annotations

import math
from collections.abc import Callable, Iterable, Iterator
from dataclasses import dataclass

from setwright.catalogue.entries import Exercise
from setwright.solver.evaluation.finding import ClashMember, Wish
from setwright.solver.evaluation.prescriptions import Prescription
from setwright.solver.evaluation.resolved_brief import ResolvedBrief
from setwright.solver.evaluation.resolved_day import ResolvedDay
from setwright.solver.linear.columns import Column, DayGroup
from setwright.solver.linear.instance import Instance

Expression = dict[int, int]
"""A linear expression: variable -> coefficient."""
Weigh = Callable[[Exercise, Prescription], int]


@dataclass(frozen=True)
class Constraint:
    """low <= sum of coefficient * variable <= high, posted by one rule."""

    rule: str
    index: tuple[int, ...]
    coefficient: tuple[int, ...]
    low: int | None
    high: int | None
    wish: Wish | None = None
    """The brief's wish that the constraint stands for, where it stands for one."""

    @property
    def member(self) -> ClashMember:
        """What the constraint is in a clash: all constraints of one rule, or of one wish, are one member."""
        return ClashMember(self.rule, self.wish)


@dataclass(frozen=True)
class Match:
    """How many pairs are made between halves of one kind and halves of another: a variable, and the columns of each."""

    pairs: int
    one: tuple[int, ...]
    other: tuple[int, ...]


@dataclass(frozen=True)
class StimulusCurve:
    """A muscle's part of the objective, concave in its effective sets: `weight` score units at index 1.

    For each group of days the effective sets as (column, amount in 1/100,000 set) pairs.
    """

    muscle: str
    weight: float
    groups: tuple[tuple[int, tuple[tuple[int, int], ...]], ...]
    most: float
    """Weekly good sets U that cannot be passed."""


class LinearModel:
    """An integer program to be maximised: the columns first, then what rules add.

    Variable j has the bounds `low[j]` and `high[j]` and the objective `objective[j]` in score units; `integer[j]` says
    whether it is whole. Variables 0 to len(columns) - 1 count how often each column is used.
    """

    def __init__(self, instance: Instance, groups: tuple[DayGroup, ...], columns: Iterable[Column]) -> None:
        self.instance = instance
        self.resolved: ResolvedBrief = instance.resolved
        self.groups = groups
        self.columns = tuple(columns)
        self.low: list[int] = []
        self.high: list[int] = []
        self.objective: list[float] = []
        self.integer: list[bool] = []
        self.constraints: list[Constraint] = []
        self.curves: list[StimulusCurve] = []
        self.matches: list[Match] = []
        """How halves of pairs that stand as columns of their own are made into pairs."""
        self.by_group: list[list[int]] = [[] for _ in groups]
        self.using: list[dict[int, dict[Prescription, list[int]]]] = [{} for _ in groups]
        """For each group of days: class -> prescription -> columns; many columns share few of them."""
        self.closed: dict[str, dict[int, int]] = {}
        """Rule -> the columns it closed because the brief makes it hard, with the bound each had before."""
        freed = self.resolved.off("exercise-days")
        most = len(self.resolved.days) if freed else round(self.resolved.limit("third-day", "most"))
        for j, column in enumerate(self.columns):
            group = groups[column.group]
            copies = min(len(instance.classes[a.cls].members) for a in column.assignments) * most
            self.variable(min(len(group.days), copies))
            self.by_group[column.group].append(j)
            for assignment in column.assignments:
                self.using[column.group].setdefault(assignment.cls, {}).setdefault(assignment.prescription, []).append(
                    j
                )
        self.days_in: list[Expression | None] = [None for _ in groups]
        self.on_day: dict[tuple[str, int], Expression] = {}
        self.regions: dict[tuple[str, int], Expression] = {}
        self.distinct: dict[int, int] = {}
        self.third: dict[int, int] = {}
        self.work: list[Expression] = [{} for _ in groups]
        """For each group of days the half seconds of its sessions without the general warm-up."""
        self.given: list[int | None] = [None for _ in groups]
        """For each group of days the variable that holds the seconds of warm-up given up; None where none may be."""

    @property
    def daily(self) -> bool:
        """Whether every group is one day, so that rules between days can be exact."""
        return all(len(group.days) == 1 and group.regions is None for group in self.groups)

    @property
    def patterned(self) -> bool:
        """Whether groups of days are told apart by the regions they train."""
        return any(group.regions is not None for group in self.groups)

    # ---- variables

    def variable(self, high: int, objective: float = 0.0, integer: bool = True, low: int = 0) -> int:
        """A new variable's index."""
        self.low.append(low)
        self.high.append(high)
        self.objective.append(objective)
        self.integer.append(integer)
        return len(self.low) - 1

    def violation(self, rule: str, most: int, cost: float, integer: bool = True) -> int:
        """A variable for a rule's breach at a cost for each unit; held at 0 where the brief makes the rule hard."""
        return self.variable(0 if self.resolved.forced(rule) else most, -cost, integer)

    # ---- expressions

    def exercise(self, cls: int) -> Exercise:
        """The exercise that stands for a class."""
        return self.instance.classes[cls].exercise

    def total(self, weigh: Weigh, group: int | None = None) -> Expression:
        """The sum of what each assignment weighs, over one group of days or all."""
        found: Expression = {}
        for exercise, ways in self._ways(group):
            for prescription, columns in ways.items():
                _add(found, columns, weigh(exercise, prescription))
        return _in_order(found)

    def product(
        self, share: Callable[[Exercise], int], amount: Callable[[Prescription], int], group: int | None = None
    ) -> Expression:
        """The sum of each exercise's share times the amount of the way it is done."""
        found: Expression = {}
        for exercise, ways in self._ways(group):
            part = share(exercise)
            for prescription, columns in ways.items() if part else ():
                _add(found, columns, part * amount(prescription))
        return _in_order(found)

    def count(self, wanted: Callable[[Exercise], bool], group: int | None = None) -> Expression:
        """How many exercises of a kind stand in a group of days or in the week."""
        found: Expression = {}
        for exercise, ways in self._ways(group):
            for columns in ways.values() if wanted(exercise) else ():
                _add(found, columns, 1)
        return _in_order(found)

    def _ways(self, group: int | None) -> Iterator[tuple[Exercise, dict[Prescription, list[int]]]]:
        """Each class's exercise with its columns by prescription, in one group of days or in all."""
        classes = self.instance.classes
        for here in self.using if group is None else (self.using[group],):
            for cls, ways in here.items():
                yield classes[cls].members[0], ways

    def uses(self, cls: int) -> Expression:
        """How often a class stands in the week."""
        found = (j for here in self.using for columns in here.get(cls, {}).values() for j in columns)
        return dict.fromkeys(sorted(found), 1)

    def size(self, group: int) -> tuple[Expression, int]:
        """The number of days in a group, as an expression and a constant."""
        days = self.days_in[group]
        return ({}, len(self.groups[group].days)) if days is None else (days, 0)

    def day(self, group: int) -> ResolvedDay:
        """What the days of a group share."""
        return self.instance.day(self.groups[group].like)

    # ---- constraints

    def constrain(
        self,
        rule: str,
        expression: Expression,
        low: int | None = None,
        high: int | None = None,
        wish: Wish | None = None,
    ) -> None:
        """Post low <= expression <= high, divided by the greatest common divisor; one that cannot bind is left out."""
        expression = {j: v for j, v in expression.items() if v}
        top = sum(v * (self.high[j] if v > 0 else self.low[j]) for j, v in expression.items())
        bottom = sum(v * (self.low[j] if v > 0 else self.high[j]) for j, v in expression.items())
        if (high is None or top <= high) and (low is None or bottom >= low):
            return
        shared = math.gcd(*expression.values(), low or 0, high or 0) or 1
        index = tuple(sorted(expression))
        self.constraints.append(
            Constraint(
                rule,
                index,
                tuple(expression[j] // shared for j in index),
                None if low is None else low // shared,
                None if high is None else high // shared,
                wish,
            )
        )

    def demand(self, wish: Wish, expression: Expression, low: int) -> None:
        """Ask for at least `low`, as a wish of the brief."""
        self.constrain(wish.rule, expression, low=low, wish=wish)

    def reopen(self) -> None:
        """Turn closed columns into constraints of the rules that close them, so that a clash can name those rules."""
        for rule, bounds in self.closed.items():
            for j, high in bounds.items():
                self.high[j] = max(self.high[j], high)
            self.constrain(rule, dict.fromkeys(bounds, 1), high=0)
        self.closed = {}

    def region_week(self, region: str) -> Expression:
        """The days of the week with a multi-joint lift of a region."""
        return combined(*(found for (r, _), found in self.regions.items() if r == region))

    def at_most_a_day(self, rule: str, expression: Expression, cap: int, group: int) -> None:
        """Post that an expression is at most `cap` on each day of a group."""
        days, constant = self.size(group)
        self.constrain(rule, combined(expression, scaled(days, -cap)), high=cap * constant)

    def at_least_a_day(self, rule: str, expression: Expression, floor: int, group: int) -> None:
        """Post that an expression is at least `floor` on each day of a group."""
        days, constant = self.size(group)
        self.constrain(rule, combined(expression, scaled(days, -floor)), low=floor * constant)

    def days_with(self, rule: str, expression: Expression, group: int) -> int:
        """A variable no greater than the days of a group on which an expression is not 0."""
        held = self.variable(len(self.groups[group].days))
        self.constrain(rule, combined({held: 1}, scaled(expression, -1)), high=0)
        self.at_most_a_day(rule, {held: 1}, 1, group)
        return held

    def penalise(self, rule: str, expression: Expression, cost: float) -> None:
        """Charge each unit of some columns, or close them where the brief makes the rule hard."""
        for j, amount in expression.items():
            if self.resolved.forced(rule) and cost > 0:
                before = max((bounds.get(j, 0) for bounds in self.closed.values()), default=0)
                self.closed.setdefault(rule, {})[j] = max(self.high[j], before)
                self.high[j] = 0
            else:
                self.objective[j] -= cost * amount


def _add(found: Expression, columns: list[int], value: int) -> None:
    """Add a value to each of some columns' coefficients."""
    if value:
        for j in columns:
            found[j] = found.get(j, 0) + value


def _in_order(found: Expression) -> Expression:
    """An expression sorted by its variables, without those whose coefficient is 0."""
    return {j: found[j] for j in sorted(found) if found[j]}


def combined(*parts: Expression) -> Expression:
    """The sum of some expressions."""
    found: Expression = {}
    for part in parts:
        for j, v in part.items():
            found[j] = found.get(j, 0) + v
    return found


def scaled(expression: Expression, factor: int) -> Expression:
    """An expression times a number."""
    return {j: factor * v for j, v in expression.items()}
