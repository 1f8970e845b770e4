"""Why no week is possible: a smallest set of wishes and rules that clash, found by halving what may be left out."""

from __future__ import annotations

import math
from collections.abc import Iterable
from dataclasses import dataclass

from setwright.solver.engines.build import all_day_columns, day_model
from setwright.solver.engines.cpsat import CpSatModel
from setwright.solver.evaluation.finding import ClashMember, Wish
from setwright.solver.linear.columns import Column, Instance
from setwright.solver.linear.linear_model import LinearModel

WORK = 8.0
PLAIN = ("day-minutes", "muscle-day-cap")
"""Rules that need no explaining: named rather than others where either would do."""


def conflict_of(instance: Instance, seconds: float = math.inf) -> tuple[ClashMember, ...]:
    """The smallest clash of a brief (leaving any member out makes its others possible), or nothing if none is shown.

    `seconds` is a net for each look at whether some parts are possible.
    """
    look = SubsetOracle(feasibility_model(instance), seconds)
    return tuple(clash_of(look, parts_of(look.model)))


def conflicts_of(instance: Instance, most: int = 3, seconds: float = math.inf) -> tuple[tuple[ClashMember, ...], ...]:
    """Clashes that share no member, the first as `conflict_of` has it: each must be freed before there is a week."""
    look = SubsetOracle(feasibility_model(instance), seconds)
    parts = parts_of(look.model)
    found: list[tuple[ClashMember, ...]] = []
    while len(found) < most:
        clash = clash_of(look, parts)
        if not clash:
            break
        found.append(tuple(clash))
        parts = [part for part in parts if part not in clash]
    return tuple(found)


def feasibility_model(instance: Instance) -> LinearModel:
    """The week on its days with as few columns as tell whether it is possible, columns closed by rules reopened."""
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
        if key not in found or half_seconds(column) < half_seconds(found[key]):
            found[key] = column
    return tuple(found.values())


def half_seconds(column: Column) -> int:
    return sum(assignment.prescription.half_seconds for assignment in column.assignments)


def parts_of(model: LinearModel) -> list[ClashMember]:
    """What may clash, what is rather named first: wishes, then minutes and caps, then other rules; in a fixed order."""
    none = Wish("", "")
    parts = dict.fromkeys(constraint.member for constraint in model.constraints)
    return sorted(parts, key=lambda p: (not p.wish, p.rule not in PLAIN, p.rule, p.wish or none))


@dataclass(frozen=True)
class SubsetOracle:
    """A sheet of which parts are tried, and the net of seconds for each trial."""

    model: LinearModel
    seconds: float

    def impossible(self, parts: Iterable[ClashMember], presolve: bool = True) -> bool:
        """Whether no week meets these parts."""
        return self.program(parts).solve(WORK, self.seconds, presolve=presolve).status == "INFEASIBLE"

    def core(self, parts: Iterable[ClashMember]) -> frozenset[ClashMember] | None:
        """Some of these parts that cannot all be met, found in one go; None where none were shown."""
        return self.program(parts, assumed=True).core(WORK, self.seconds)

    def program(self, parts: Iterable[ClashMember], assumed: bool = False) -> CpSatModel:
        kept = frozenset(parts)
        return CpSatModel(self.model, skip=lambda member: member not in kept, feasibility_only=True, assumed=assumed)


def clash_of(look: SubsetOracle, parts: list[ClashMember]) -> list[ClashMember]:
    """The smallest clash among some parts, in their order; proved by a second look without presolve."""
    told = [part for part in parts if part.wish or part.rule in PLAIN]
    if look.impossible(told):
        parts = told
    elif not look.impossible(parts):
        return []
    core = look.core(parts)
    if core and look.impossible(core):
        parts = [part for part in parts if part in core]
    found = quickxplain(look, [], False, parts)
    if not look.impossible(found, presolve=False):
        return []
    return [part for part in parts if part in found]


def quickxplain(
    look: SubsetOracle, held: list[ClashMember], changed: bool, parts: list[ClashMember]
) -> list[ClashMember]:
    """The parts that clash with those held, none of them to spare, earlier ones rather than later.

    Divide and conquer after Junker, QUICKXPLAIN (AAAI 2004): the halves are searched in turn, each held to the other's
    result.
    """
    if changed and look.impossible(held):
        return []
    if len(parts) == 1:
        return parts
    first, second = parts[: len(parts) // 2], parts[len(parts) // 2 :]
    late = quickxplain(look, held + first, True, second)
    early = quickxplain(look, held + late, bool(late), first)
    return early + late
