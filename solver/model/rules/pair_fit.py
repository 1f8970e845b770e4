"""Which half pairs of a cell can be matched; explicit pairs fit by their columns."""

from __future__ import annotations

from collections.abc import Callable

from setwright.catalogue.entries import Exercise
from setwright.solver.model.columns import REGIONS
from setwright.solver.model.sheet import Sheet, combined
from setwright.solver.reckoning.options import Option
from setwright.solver.reckoning.pairs import WEIGHTS, places


def half(sheet: Sheet, column: int) -> bool:
    """Whether a column is one half of a pair."""
    atoms = sheet.columns[column].atoms
    return len(atoms) == 1 and atoms[0].option.paired


def option_of(sheet: Sheet, column: int) -> Option:
    return sheet.columns[column].atoms[0].option


def match(sheet: Sheet, cell: int, halves: list[int]) -> None:
    """Rows that any matching of these halves into pairs keeps: the shares that one partner at most can have."""
    terms = sheet.terms
    pairs = sheet.variable(4 * len(sheet.cells[cell].days))
    lifts = {j: sheet.exercise(sheet.columns[j].atoms[0].cls) for j in halves}
    sheet.row("pair-fit", combined(dict.fromkeys(halves, 1), {pairs: -2}), low=0, high=0)

    def once(wanted: Callable[[Exercise], int]) -> None:
        weighed = {j: wanted(e) for j, e in lifts.items()}
        sheet.row("pair-fit", combined(weighed, {pairs: -2}), high=0)

    for muscle in terms.muscles:
        once(lambda e, m=muscle: 2 if m in e.direct else 1 if m in e.muscles else 0)
    once(lambda e: 2 if e.grip_limited else 0)
    once(lambda e: 2 if places(terms, e, "fixed") else 0)
    for region in REGIONS:
        once(lambda e, r=region: 2 if e.region == r and r in ("push", "pull") else 0)
    light = {
        j: 1 if places(terms, e, "fixed") else 0 if any(i in WEIGHTS for i in e.needs) else -1 for j, e in lifts.items()
    }
    sheet.row("pair-fit", light, high=0)


def post(sheet: Sheet) -> None:
    for cell in sheet.cells:
        halves = [j for j in sheet.by_cell[cell.index] if half(sheet, j)]
        for turn in sorted({(option_of(sheet, j).sets, option_of(sheet, j).rest) for j in halves}):
            mine = [j for j in halves if (option_of(sheet, j).sets, option_of(sheet, j).rest) == turn]
            match(sheet, cell.index, mine)
    partners(sheet, halves)


def partners(sheet: Sheet, halves: list[int]) -> None:
    """No class has more halves than all the classes that fit it."""
    classes: dict[int, list[int]] = {}
    for j in halves:
        classes.setdefault(sheet.columns[j].atoms[0].cls, []).append(j)
    for cls, mine in classes.items():
        fitting = [j for other, theirs in classes.items() if sheet.board.fit(cls, other) for j in theirs]
        sheet.row("pair-fit", combined(dict.fromkeys(mine, 1), {j: -1 for j in fitting if j not in mine}), high=0)
