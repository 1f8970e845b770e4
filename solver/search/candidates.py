"""Which columns the search looks at: the best by reduced cost on each day, and what the brief pins."""

from __future__ import annotations

from dataclasses import dataclass

from setwright.solver.linear.columns import (
    Atom,
    Board,
    Cell,
    Column,
    cells_of_days,
    pair_columns,
)
from setwright.solver.engines.highs import Relaxed
from setwright.solver.linear.linear_model import Sheet

SINGLES = 260
HALVES = 70
PAIRS = 260


@dataclass(frozen=True)
class Candidates:
    """Columns on days, each day's in the order they are worth trying."""

    columns: tuple[Column, ...]
    ranked: tuple[tuple[int, ...], ...]
    """For each day, indices into `columns`, best first; single and paired by turns."""
    must: frozenset[int]
    """Columns that a pin may need, open in every neighbourhood."""


def candidates_of(board: Board, week: Sheet, relaxed: Relaxed) -> Candidates:
    """The candidates of a brief, by the reduced costs of its week without days."""
    value = {(week.cells[c.cell].group, c.atoms[0]): relaxed.reduced[j] for j, c in enumerate(week.columns)}
    columns: list[Column] = []
    ranked: list[tuple[int, ...]] = []
    must: set[int] = set()
    for cell in cells_of_days(board):
        mine = sorted((a for g, a in value if g == cell.group), key=lambda a: (-value[cell.group, a], a.cls, a.option))
        singles = [Column(cell.index, (a,)) for a in mine if not a.option.paired]
        pinned = [c for c in singles if pinned_column(board, c)]
        pairs = best_pairs(board, cell, [a for a in mine if a.option.paired], value)
        pinned += [c for c in pairs if pinned_column(board, c)]
        singles, pairs = singles[:SINGLES], pairs[:PAIRS]
        here = list(dict.fromkeys([*by_turns(singles, pairs), *pinned]))
        first = len(columns)
        columns += here
        ranked.append(tuple(range(first, len(columns))))
        must |= {first + i for i, c in enumerate(here) if c in set(pinned)}
    return Candidates(tuple(columns), tuple(ranked), frozenset(must))


def candidates_by_day(board: Board, sheet: Sheet, relaxed: Relaxed) -> Candidates:
    """The candidates by the reduced costs of the week on its days, whose pairs are real ones and not halves."""
    columns: list[Column] = []
    ranked: list[tuple[int, ...]] = []
    must: set[int] = set()
    for mine in sheet.by_cell:
        order = sorted(mine, key=lambda j: (-relaxed.reduced[j], j))
        found = [sheet.columns[j] for j in order]
        singles = [c for c in found if len(c.atoms) == 1 and not c.atoms[0].option.paired]
        pairs = [c for c in found if len(c.atoms) == 2]
        pinned = {c for c in found if pinned_column(board, c)}
        here = list(dict.fromkeys([*by_turns(singles[:SINGLES], pairs[:PAIRS]), *(c for c in found if c in pinned)]))
        first = len(columns)
        columns += here
        ranked.append(tuple(range(first, len(columns))))
        must |= {first + i for i, c in enumerate(here) if c in pinned}
    return Candidates(tuple(columns), tuple(ranked), frozenset(must))


def pinned_column(board: Board, column: Column) -> bool:
    return any(board.classes[a.cls].exercise.id in board.terms.pinned for a in column.atoms)


def best_pairs(board: Board, cell: Cell, halves: list[Atom], value: dict[tuple[int, Atom], float]) -> list[Column]:
    """Pairs of the best halves, best sum first."""
    pinned = [a for a in halves[HALVES:] if board.classes[a.cls].exercise.id in board.terms.pinned]
    found = pair_columns(board, cell, halves[:HALVES] + pinned)

    def worth(column: Column) -> tuple[float, tuple[Atom, ...]]:
        return sum(value[cell.group, a] for a in column.atoms), column.atoms

    return sorted(found, key=lambda c: (-worth(c)[0], [(a.cls, a.option) for a in c.atoms]))


def by_turns(singles: list[Column], pairs: list[Column]) -> list[Column]:
    """Two lists merged one by one."""
    merged: list[Column] = []
    for i in range(max(len(singles), len(pairs))):
        merged += singles[i : i + 1] + pairs[i : i + 1]
    return merged
