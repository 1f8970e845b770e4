"""A climb with more columns open: those that a purpose of its own asks for, in every neighbourhood."""

from __future__ import annotations

import time
from collections.abc import Iterable

from setwright.solver.model.columns import Column
from setwright.solver.model.limits import Limits
from setwright.solver.model.search.candidates import Candidates
from setwright.solver.model.search.climb import Climb


def widened(climb: Climb, wanted: Iterable[Column], limits: Limits) -> Climb:
    """A climb of its own at the same week, with some columns added where they lack and open on their days."""
    known = {column: j for j, column in enumerate(climb.candidates.columns)}
    wanted = tuple(dict.fromkeys(wanted))
    more = tuple(column for column in wanted if column not in known)
    columns = (*climb.candidates.columns, *more)
    place = {column: j for j, column in enumerate(columns)}
    must = climb.candidates.must | {place[column] for column in wanted}
    days = range(len(climb.candidates.ranked))
    mine = [tuple(place[column] for column in more if column.cell == day) for day in days]
    ranked = tuple((*climb.candidates.ranked[day], *mine[day]) for day in days)
    wider = Climb(climb.board, Candidates(columns, ranked, must), limits, time.monotonic() + limits.seconds)
    wider.chosen, wider.best, wider.stopped = climb.chosen, climb.best, climb.stopped
    return wider
