"""Why no week is possible: a smallest set of wishes and rules that clash, found by leaving them out in turn."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass

from setwright.solver.model.build import all_day_columns, day_sheet
from setwright.solver.model.columns import Board
from setwright.solver.model.engines.cpsat import Program
from setwright.solver.model.sheet import Sheet

WORK = 8.0
SECONDS = 60.0
Part = tuple[str, str]
"""(rule, the wish's own words; empty for a rule that is no wish)."""


@dataclass(frozen=True)
class Conflict:
    """One member of the clash: a rule, and the wish in the brief's words where it is one."""

    rule: str
    words: str


def conflict_of(board: Board) -> tuple[Conflict, ...]:
    """The smallest clash of a brief (leaving any member out makes a week possible), or nothing if none is shown."""
    sheet = day_sheet(board, all_day_columns(board))
    parts = parts_of(sheet)
    if not impossible(sheet, frozenset(parts)):
        return ()
    kept = list(parts)
    for part in parts:
        fewer = [p for p in kept if p != part]
        if impossible(sheet, frozenset(fewer)):
            kept = fewer
    return tuple(Conflict(rule, words) for rule, words in kept)


def parts_of(sheet: Sheet) -> list[Part]:
    """What may clash: rules first, so that the wishes are what stays named; each once, in a fixed order."""
    parts = dict.fromkeys((row.rule, row.label) for row in sheet.rows)
    return sorted(parts, key=lambda part: (bool(part[1]), part))


def impossible(sheet: Sheet, parts: frozenset[Part]) -> bool:
    """Whether no week meets these parts; said only after a second look without presolve."""

    def skip(rule: str, words: str) -> bool:
        return (rule, words) not in parts

    return all(infeasible(sheet, skip, presolve) for presolve in (True, False))


def infeasible(sheet: Sheet, skip: Callable[[str, str], bool], presolve: bool) -> bool:
    return Program(sheet, skip=skip).solve(WORK, SECONDS, presolve=presolve).status == "INFEASIBLE"
