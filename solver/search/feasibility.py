"""Whether a brief has any week, and a first good one: much cheaper than a search, without a bound."""

from __future__ import annotations

import time
from dataclasses import dataclass, replace

from setwright.solver.engines.build import day_sheet, week_sheet
from setwright.solver.engines.infeasibility import possible_sheet, quickest
from setwright.solver.linear.columns import Board, Column, cells_of_days, pair_columns, single_columns
from setwright.solver.engines import highs
from setwright.solver.search.limits import SEARCHES
from setwright.solver.search.candidates import candidates_of
from setwright.solver.search.neighbourhood_search import Climb, Stopped
from setwright.solver.search.neighbourhoods import Neighbourhood
from setwright.solver.search.initial_solution import any_week, move_to
from setwright.solver.linear.linear_model import Sheet
from setwright.solver.auditing import Audit

CHEAP = replace(SEARCHES["quick"], rounds=4, work=0.2, columns=30)
WEEK_COLUMNS = 90
"""Columns open in the first look at the whole week, shared among its days."""


@dataclass(frozen=True)
class Possible:
    """Whether some week meets every rule and wish (None: the work was spent without a word), and one that does."""

    able: bool | None
    week: tuple[Column, ...] = ()


def possible(board: Board) -> Possible:
    """Whether there is a week.

    Where pairs are open the few columns of pinned pairs are tried first: they are often enough.
    """
    sheets = (small_sheet, possible_sheet) if board.terms.pairs else (possible_sheet,)
    for make in sheets:
        sheet = make(board)
        found = any_week(sheet, CHEAP)
        if found.columns is not None:
            return Possible(True, tuple(sheet.columns[j] for j in sorted(found.columns)))
    return Possible(None if found.status == "UNKNOWN" else False)


def small_sheet(board: Board) -> Sheet:
    """The week on its days without pairs but those of pinned exercises."""
    columns: list[Column] = []
    for cell in cells_of_days(board):
        here = list(single_columns(board, (cell,), halves=True))
        columns += [c for c in here if not c.atoms[0].option.paired]
        columns += pair_columns(
            board, cell, [c.atoms[0] for c in here if c.atoms[0].option.paired and pinned(board, c)]
        )
    return day_sheet(board, quickest(board, columns))


def pinned(board: Board, column: Column) -> bool:
    """Whether a half's exercise is in a pinned pair."""
    pairs = {e for p in board.terms.brief.pins if p.pair_with for e in (p.exercise, p.pair_with)}
    return board.classes[column.atoms[0].cls].exercise.id in pairs


def first_week(board: Board, known: tuple[Column, ...] = ()) -> Audit | None:
    """A good week by little work, audited, from one known to be possible or from none; None where none is found."""
    week = week_sheet(board)
    climb = Climb(board, candidates_of(board, week, highs.relax(week)), CHEAP, time.monotonic() + CHEAP.seconds)
    days = len(board.terms.days)
    try:
        climb.try_days(Neighbourhood(tuple(range(days)), max(16, WEEK_COLUMNS // days)), 2 * CHEAP.work)
        if climb.best is None:
            move_to(climb, known or possible(board).week)
        if climb.best is not None:
            climb.climb(CHEAP.rounds_for(days))
    except Stopped:
        pass
    return climb.best
