"""Why no week is possible: a smallest set of wishes and rules that clash, found by QuickXplain."""

from __future__ import annotations

import math
from collections.abc import Collection, Iterable
from dataclasses import dataclass

from setwright.solver.auditing import Audit
from setwright.solver.engines.build import all_day_columns, day_model
from setwright.solver.engines.cpsat import CpSatModel
from setwright.solver.engines.held_columns import hold
from setwright.solver.evaluation.finding import ClashMember, Wish
from setwright.solver.linear.columns import Column
from setwright.solver.linear.instance import Instance
from setwright.solver.linear.linear_model import LinearModel

WORK = 8.0
"""CP-SAT's deterministic time for each answer; where it does not suffice a subset counts as possible."""
PLAIN = ("day-minutes", "muscle-day-cap")
"""Rules that need no explaining: named rather than others where either would do."""


def conflict_of(instance: Instance, seconds: float = math.inf) -> tuple[ClashMember, ...]:
    """The smallest clash of a brief (leaving any member out makes its others possible), or nothing if none is shown.

    `seconds` is a wall-clock limit for each question whether some parts are possible.
    """
    return _smallest_clash(feasibility_model(instance), seconds)


def conflict_beside(
    instance: Instance, held: tuple[Column, ...], done: Audit, free: Collection[int], seconds: float = math.inf
) -> tuple[ClashMember, ...]:
    """The same for a week of which some days are `free` and the others hold just the columns of `done`."""
    open_columns = [c for c in quickest(instance, all_day_columns(instance)) if c.group in free]
    model = day_model(instance, (*held, *open_columns))
    model.reopen()
    hold(model, range(len(held)), done)
    return _smallest_clash(model, seconds)


def _smallest_clash(model: LinearModel, seconds: float) -> tuple[ClashMember, ...]:
    return tuple(_clash_among(SubsetOracle(model, seconds), parts_of(model)))


def feasibility_model(instance: Instance) -> LinearModel:
    """The week on its days over just the columns that are needed to tell whether there is one.

    Columns that rules close are open again, held at 0 by constraints of those rules, so that a clash can name them.
    """
    model = day_model(instance, quickest(instance, all_day_columns(instance)))
    model.reopen()
    return model


def quickest(instance: Instance, columns: Iterable[Column]) -> tuple[Column, ...]:
    """Of columns that differ in rest alone the one of fewest seconds; all where a session can be too short."""
    if instance.resolved.goal == "efficiency":
        return tuple(columns)
    found: dict[tuple[object, ...], Column] = {}
    for column in columns:
        key = (
            column.group,
            *((a.cls, a.prescription.sets, a.prescription.technique, a.prescription.drops) for a in column.assignments),
        )
        if key not in found or _half_seconds(column) < _half_seconds(found[key]):
            found[key] = column
    return tuple(found.values())


def _half_seconds(column: Column) -> int:
    return sum(assignment.prescription.half_seconds for assignment in column.assignments)


def parts_of(model: LinearModel) -> list[ClashMember]:
    """What may clash, in the order in which it is named: wishes, then minutes and caps, then other rules."""
    none = Wish("", "")
    parts = dict.fromkeys(constraint.member for constraint in model.constraints)
    return sorted(parts, key=lambda p: (not p.wish, p.rule not in PLAIN, p.rule, p.wish or none))


@dataclass(frozen=True)
class SubsetOracle:
    """Says of subsets of a linear model's parts whether a week can meet them; `seconds` limits each answer."""

    model: LinearModel
    seconds: float

    def impossible(self, parts: Iterable[ClashMember], presolve: bool = True) -> bool:
        """Whether no week meets these parts."""
        return self._cp_sat_model(parts).solve(WORK, self.seconds, presolve=presolve).status == "INFEASIBLE"

    def core(self, parts: Iterable[ClashMember]) -> frozenset[ClashMember] | None:
        """Some of these parts that cannot all be met, found in one go; None where none were shown."""
        return self._cp_sat_model(parts, assumptions=True).core(WORK, self.seconds)

    def _cp_sat_model(self, parts: Iterable[ClashMember], assumptions: bool = False) -> CpSatModel:
        kept = frozenset(parts)
        return CpSatModel(
            self.model, skip=lambda member: member not in kept, feasibility_only=True, assumptions=assumptions
        )


def _clash_among(oracle: SubsetOracle, parts: list[ClashMember]) -> list[ClashMember]:
    """The smallest clash among some parts, in their order; shown once more without presolve, which can be wrong."""
    told = [part for part in parts if part.wish or part.rule in PLAIN]
    if oracle.impossible(told):
        parts = told
    elif not oracle.impossible(parts):
        return []
    core = oracle.core(parts)
    if core and oracle.impossible(core):
        parts = [part for part in parts if part in core]
    found = quickxplain(oracle, [], False, parts)
    if not oracle.impossible(found, presolve=False):
        return []
    return [part for part in parts if part in found]


def quickxplain(
    oracle: SubsetOracle, held: list[ClashMember], changed: bool, parts: list[ClashMember]
) -> list[ClashMember]:
    """The parts that clash with those held, none of them to spare, earlier ones rather than later.

    Divide and conquer after Junker, QUICKXPLAIN (AAAI 2004): the halves are searched in turn, each held to the other's
    result.
    """
    if changed and oracle.impossible(held):
        return []
    if len(parts) == 1:
        return parts
    first, second = parts[: len(parts) // 2], parts[len(parts) // 2 :]
    late = quickxplain(oracle, held + first, True, second)
    early = quickxplain(oracle, held + late, bool(late), first)
    return early + late
