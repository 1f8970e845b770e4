"""Whether a brief has any week, and a first good one: much cheaper than a search, without a bound."""

from __future__ import annotations

import time
from dataclasses import replace

from setwright.solver.model.build import day_sheet, week_sheet
from setwright.solver.model.clash import SECONDS, possible_sheet, quickest
from setwright.solver.model.columns import Board, Column, cells_of_days, pair_columns, single_columns
from setwright.solver.model.engines import highs
from setwright.solver.model.engines.cpsat import Found, Program
from setwright.solver.model.limits import SEARCHES
from setwright.solver.model.search.candidates import candidates_of
from setwright.solver.model.search.climb import Climb, Stopped
from setwright.solver.model.search.neighbourhoods import Neighbourhood
from setwright.solver.model.search.opening import widened
from setwright.solver.model.sheet import Sheet
from setwright.solver.reckoning.audit import Audit

CHEAP = replace(SEARCHES["quick"], rounds=4, work=0.2, columns=30)
WORK = 3.0
"""CP-SAT's work on whether there is a week: without a word by then it counts as none."""
WEEK_COLUMNS = 90
"""Columns open in the first look at the whole week, shared among its days."""


def possible(board: Board) -> bool | None:
    """Whether some week meets every rule and wish; None where the work was spent without a word on it.

    Where pairs are open the few columns of pinned pairs are tried first: they are often enough.
    """
    if board.terms.pairs and any_week(small_sheet(board)).columns is not None:
        return True
    found = any_week(possible_sheet(board))
    return None if found.status == "UNKNOWN" else found.columns is not None


def any_week(sheet: Sheet) -> Found:
    return Program(sheet).solve(WORK, SECONDS)


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


def first_week(board: Board) -> Audit | None:
    """A good week by little work, audited; None where none is found."""
    week = week_sheet(board)
    climb = Climb(board, candidates_of(board, week, highs.relax(week)), CHEAP, time.monotonic() + SECONDS)
    days = len(board.terms.days)
    try:
        climb.try_days(Neighbourhood(tuple(range(days)), max(16, WEEK_COLUMNS // days)), 2 * CHEAP.work)
        if climb.best is None:
            climb = from_any(climb)
        if climb.best is not None:
            climb.climb(CHEAP.rounds_for(days))
    except Stopped:
        pass
    return climb.best


def from_any(climb: Climb) -> Climb:
    """The climb at any week there is, where its own columns hold none."""
    sheet = possible_sheet(climb.board)
    found = any_week(sheet)
    if found.columns is None:
        return climb
    columns = tuple(sheet.columns[j] for j in sorted(found.columns))
    wider = widened(climb, columns, CHEAP)
    place = {column: j for j, column in enumerate(wider.candidates.columns)}
    wider.take(frozenset(place[column] for column in columns))
    return wider
