"""A climb with more columns open: those of any week there is, or those that a purpose of its own asks for."""

from __future__ import annotations

import time
from collections.abc import Iterable, Sequence

from setwright.solver.engines.build import day_sheet
from setwright.solver.engines.infeasibility import possible_sheet
from setwright.solver.linear.columns import Column
from setwright.solver.engines.cpsat import Found, Program
from setwright.solver.search.limits import Limits
from setwright.solver.search.candidates import Candidates
from setwright.solver.search.neighbourhood_search import Climb
from setwright.solver.linear.linear_model import Sheet

WORK = 3.0
"""CP-SAT's work on whether there is a week: without a word by then it counts as none."""


def started(climb: Climb) -> bool:
    """Whether the climb has a first week. Where wishes may clash, first whether there is any week at all."""
    if climb.best is not None:
        if climb.refill:
            climb.start()
        return True
    doubtful = any(row.label for row in climb.sheet.rows)
    if not doubtful:
        climb.start()
    return climb.best is not None or started_somehow(climb, doubtful)


def started_somehow(climb: Climb, fill: bool) -> bool:
    """Whether the climb has a week after a look at whether there is any; `fill`: its days were not filled yet."""
    sheet = possible_sheet(climb.board)
    found = any_week(sheet, climb.limits)
    climb.check()
    if found.status == "INFEASIBLE":
        return False
    if fill:
        climb.start()
    if climb.best is None and found.columns is not None:
        move_to(climb, [sheet.columns[j] for j in sorted(found.columns)])
    return climb.best is not None or climb.start_wider()


def move_to(climb: Climb, columns: Sequence[Column]) -> None:
    """Go to the week of some columns, open in every neighbourhood from now on."""
    candidates = opened(climb.candidates, columns)
    place = {column: j for j, column in enumerate(candidates.columns)}
    climb.move(day_sheet(climb.board, candidates.columns), candidates, frozenset(place[c] for c in columns))


def any_week(sheet: Sheet, limits: Limits) -> Found:
    """Some week of a sheet by a fixed amount of work, or that there is none."""
    return Program(sheet, bare=True).solve(WORK, limits.seconds)


def widened(climb: Climb, wanted: Iterable[Column], limits: Limits) -> Climb:
    """A climb of its own at the same week, with some columns added where they lack and open on their days."""
    candidates = opened(climb.candidates, wanted)
    wider = Climb(climb.board, candidates, limits, time.monotonic() + limits.seconds)
    wider.chosen, wider.best, wider.stopped = climb.chosen, climb.best, climb.stopped
    return wider


def opened(candidates: Candidates, wanted: Iterable[Column]) -> Candidates:
    """Candidates with some columns added where they lack, open on their days in every neighbourhood."""
    known = {column: j for j, column in enumerate(candidates.columns)}
    wanted = tuple(dict.fromkeys(wanted))
    more = tuple(column for column in wanted if column not in known)
    columns = (*candidates.columns, *more)
    place = {column: j for j, column in enumerate(columns)}
    must = candidates.must | {place[column] for column in wanted}
    days = range(len(candidates.ranked))
    mine = [tuple(place[column] for column in more if column.cell == day) for day in days]
    ranked = tuple((*candidates.ranked[day], *mine[day]) for day in days)
    return Candidates(columns, ranked, must)
