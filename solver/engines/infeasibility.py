"""Why no week is possible: a smallest set of wishes and rules that clash, found by halving what may be left out."""

from __future__ import annotations

import math
from collections.abc import Iterable
from dataclasses import dataclass

from setwright.solver.engines.build import all_day_columns, day_sheet
from setwright.solver.linear.columns import Board, Column
from setwright.solver.engines.cpsat import Program
from setwright.solver.linear.linear_model import Sheet

WORK = 8.0
PLAIN = ("day-minutes", "muscle-day-cap")
"""Rules that need no explaining: named rather than others where either would do."""
Part = tuple[str, str]
"""(rule, the wish's own words; empty for a rule that is no wish)."""


@dataclass(frozen=True)
class Conflict:
    """One member of the clash: a rule, and the wish in the brief's words where it is one."""

    rule: str
    words: str


def conflict_of(board: Board, seconds: float = math.inf) -> tuple[Conflict, ...]:
    """The smallest clash of a brief (leaving any member out makes its others possible), or nothing if none is shown.

    `seconds` is a net for each look at whether some parts are possible.
    """
    look = Look(possible_sheet(board), seconds)
    return tuple(Conflict(rule, words) for rule, words in clash_of(look, parts_of(look.sheet)))


def conflicts_of(board: Board, most: int = 3, seconds: float = math.inf) -> tuple[tuple[Conflict, ...], ...]:
    """Clashes that share no member, the first as `conflict_of` has it: each must be freed before there is a week."""
    look = Look(possible_sheet(board), seconds)
    parts = parts_of(look.sheet)
    found: list[tuple[Conflict, ...]] = []
    while len(found) < most:
        clash = clash_of(look, parts)
        if not clash:
            break
        found.append(tuple(Conflict(rule, words) for rule, words in clash))
        parts = [part for part in parts if part not in clash]
    return tuple(found)


def possible_sheet(board: Board) -> Sheet:
    """The week on its days with as few columns as tell whether it is possible, columns closed by rules reopened."""
    sheet = day_sheet(board, quickest(board, all_day_columns(board)))
    sheet.reopen()
    return sheet


def quickest(board: Board, columns: Iterable[Column]) -> tuple[Column, ...]:
    """Of columns that differ in rest alone the one of fewest seconds; all where a session can be too short."""
    if board.terms.goal == "efficiency":
        return tuple(columns)
    found: dict[tuple[object, ...], Column] = {}
    for column in columns:
        key = (column.cell, *((a.cls, a.option.sets, a.option.technique, a.option.drops) for a in column.atoms))
        if key not in found or half_seconds(column) < half_seconds(found[key]):
            found[key] = column
    return tuple(found.values())


def half_seconds(column: Column) -> int:
    return sum(atom.option.half_seconds for atom in column.atoms)


def parts_of(sheet: Sheet) -> list[Part]:
    """What may clash, what is rather named first: wishes, then minutes and caps, then other rules; in a fixed order."""
    parts = dict.fromkeys((row.rule, row.label) for row in sheet.rows)
    return sorted(parts, key=lambda part: (not part[1], part[0] not in PLAIN, part))


@dataclass(frozen=True)
class Look:
    """A sheet of which parts are tried, and the net of seconds for each trial."""

    sheet: Sheet
    seconds: float

    def impossible(self, parts: Iterable[Part], presolve: bool = True) -> bool:
        """Whether no week meets these parts."""
        return self.program(parts).solve(WORK, self.seconds, presolve=presolve).status == "INFEASIBLE"

    def core(self, parts: Iterable[Part]) -> frozenset[Part] | None:
        """Some of these parts that cannot all be met, found in one go; None where none were shown."""
        return self.program(parts, assumed=True).core(WORK, self.seconds)

    def program(self, parts: Iterable[Part], assumed: bool = False) -> Program:
        kept = frozenset(parts)
        return Program(self.sheet, skip=lambda *part: part not in kept, bare=True, assumed=assumed)


def clash_of(look: Look, parts: list[Part]) -> list[Part]:
    """The smallest clash among some parts, in their order; proved by a second look without presolve."""
    told = [part for part in parts if part[1] or part[0] in PLAIN]
    if look.impossible(told):
        parts = told
    elif not look.impossible(parts):
        return []
    core = look.core(parts)
    if core and look.impossible(core):
        parts = [part for part in parts if part in core]
    found = halved(look, [], False, parts)
    if not look.impossible(found, presolve=False):
        return []
    return [part for part in parts if part in found]


def halved(look: Look, held: list[Part], changed: bool, parts: list[Part]) -> list[Part]:
    """The parts that clash with those held, none of them to spare, earlier ones rather than later.

    Divide and conquer after Junker, QUICKXPLAIN (AAAI 2004): the halves are searched in turn, each held to the other's
    result.
    """
    if changed and look.impossible(held):
        return []
    if len(parts) == 1:
        return parts
    first, second = parts[: len(parts) // 2], parts[len(parts) // 2 :]
    late = halved(look, held + first, True, second)
    early = halved(look, held + late, bool(late), first)
    return early + late
