"""Which half pairs of a cell can be matched; explicit pairs fit by their columns."""

from __future__ import annotations

from collections.abc import Callable, Mapping

from setwright.catalogue.entries import Exercise
from setwright.solver.linear.columns import REGIONS
from setwright.solver.linear.linear_model import Sheet, combined
from setwright.solver.evaluation.prescriptions import Option
from setwright.solver.evaluation.pairs import places


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
    partners(sheet, halves)


def post(sheet: Sheet) -> None:
    for cell in sheet.cells:
        halves = [j for j in sheet.by_cell[cell.index] if half(sheet, j)]
        for turn in sorted({(option_of(sheet, j).sets, option_of(sheet, j).rest) for j in halves}):
            mine = [j for j in halves if (option_of(sheet, j).sets, option_of(sheet, j).rest) == turn]
            match(sheet, cell.index, mine)


def partners(sheet: Sheet, halves: list[int]) -> None:
    """No family of classes that do not fit one another has more halves than the classes that fit some of them."""
    classes: dict[int, list[int]] = {}
    for j in halves:
        classes.setdefault(sheet.columns[j].atoms[0].cls, []).append(j)
    mates = {cls: {other for other in classes if sheet.board.fit(cls, other)} for cls in classes}
    for family in families(mates, sheet):
        fitting = sorted(set().union(*(mates[cls] for cls in family)))
        mine = {j: 1 for cls in family for j in classes[cls]}
        theirs = {j: -1 for other in fitting for j in classes[other]}
        sheet.row("pair-fit", combined(mine, theirs), high=0)


def families(mates: Mapping[int, set[int]], sheet: Sheet) -> list[list[int]]:
    """Each class alone, and the classes that share what no pair may: a prime mover, grip, a fixed station, a region."""
    terms, classes = sheet.terms, sorted(mates)
    kinds: list[Callable[[Exercise], bool]] = [
        lambda e: e.grip_limited,
        lambda e: bool(places(terms, e, "fixed")),
        *(lambda e, r=region: e.region == r for region in ("push", "pull")),
        *(lambda e, m=muscle: m in e.direct for muscle in terms.muscles),
    ]
    found = [[cls] for cls in classes]
    for kind in kinds:
        family = [cls for cls in classes if kind(sheet.exercise(cls))]
        if len(family) > 1 and all(mates[cls].isdisjoint(family) for cls in family):
            found.append(family)
    return found
