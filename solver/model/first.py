"""Whether a brief has any week, and a first good one: much cheaper than a search, without a bound."""

from __future__ import annotations

import time
from dataclasses import replace

from setwright.solver.model.build import week_sheet
from setwright.solver.model.clash import SECONDS, WORK, possible_sheet
from setwright.solver.model.columns import Board
from setwright.solver.model.engines import highs
from setwright.solver.model.engines.cpsat import Program
from setwright.solver.model.limits import SEARCHES
from setwright.solver.model.search.candidates import candidates_of
from setwright.solver.model.search.climb import Climb, Stopped
from setwright.solver.model.search.opening import widened
from setwright.solver.reckoning.audit import Audit

CHEAP = replace(SEARCHES["quick"], rounds=4, work=0.2, columns=30)


def possible(board: Board) -> bool | None:
    """Whether some week meets every rule and wish; None where the work was spent without a word on it."""
    found = Program(possible_sheet(board)).solve(WORK, SECONDS)
    return None if found.status == "UNKNOWN" else found.columns is not None


def first_week(board: Board) -> Audit | None:
    """A good week by little work, audited: no worse than the first one found; None where none is found."""
    week = week_sheet(board)
    climb = Climb(board, candidates_of(board, week, highs.relax(week)), CHEAP, time.monotonic() + SECONDS)
    try:
        if not climb.start():
            climb = from_any(climb)
        if climb.best is not None:
            climb.climb(CHEAP.rounds_for(len(board.terms.days)))
    except Stopped:
        pass
    return climb.best


def from_any(climb: Climb) -> Climb:
    """The climb at any week there is, where its own columns hold none."""
    sheet = possible_sheet(climb.board)
    found = Program(sheet).solve(WORK, SECONDS)
    if found.columns is None:
        return climb
    columns = tuple(sheet.columns[j] for j in sorted(found.columns))
    wider = widened(climb, columns, CHEAP)
    place = {column: j for j, column in enumerate(wider.candidates.columns)}
    wider.take(frozenset(place[column] for column in columns))
    return wider
