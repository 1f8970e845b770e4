"""A whole sheet from a board: columns, region days, every rule's rows, the stimulus."""

from __future__ import annotations

from collections.abc import Iterable

from setwright.solver.linear.columns import (
    Atom,
    Board,
    Cell,
    Column,
    cells_of_days,
    cells_of_groups,
    cells_of_themes,
    pair_columns,
    single_columns,
)
from setwright.solver.posts import post_all
from setwright.solver.linear.linear_model import Sheet
from setwright.solver.engines.stimulus import post_stimulus
from setwright.solver.linear.region_days import post_regions


def build(board: Board, cells: tuple[Cell, ...], columns: Iterable[Column]) -> Sheet:
    """The sheet of some columns, with all that the rules post."""
    sheet = Sheet(board, cells, columns)
    post_regions(sheet)
    post_all(sheet)
    post_stimulus(sheet)
    return sheet


def week_sheet(board: Board) -> Sheet:
    """The week without a day index: a relaxation whose bound holds for every week."""
    cells = cells_of_groups(board)
    return build(board, cells, single_columns(board, cells, halves=True))


def theme_sheet(board: Board, keep: frozenset[tuple[int, Atom]] | None = None) -> Sheet:
    """The week without a day index, by themes of days: tighter for weeks of many days."""
    cells = cells_of_themes(board)
    columns = single_columns(board, cells, halves=True)
    if keep is not None:
        columns = (c for c in columns if (cells[c.cell].group, c.atoms[0]) in keep)
    return build(board, cells, columns)


def day_sheet(board: Board, columns: Iterable[Column]) -> Sheet:
    """The week on its days, over some columns."""
    return build(board, cells_of_days(board), columns)


def all_day_columns(board: Board) -> tuple[Column, ...]:
    """Every column of the week on its days, all pairs included: the statement of the problem."""
    cells = cells_of_days(board)
    found: list[Column] = []
    for cell in cells:
        here = list(single_columns(board, (cell,), halves=True))
        found += [c for c in here if not c.atoms[0].option.paired]
        found += pair_columns(board, cell, [c.atoms[0] for c in here if c.atoms[0].option.paired])
    return tuple(found)
