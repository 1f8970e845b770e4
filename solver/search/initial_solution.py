"""A climb with more columns open: those of any week there is, or those that a purpose of its own asks for."""

from __future__ import annotations

import time
from collections.abc import Iterable, Sequence

from setwright.solver.engines.build import day_model
from setwright.solver.engines.cpsat import CpSatModel, CpSatResult
from setwright.solver.engines.infeasibility import feasibility_model
from setwright.solver.linear.columns import Column
from setwright.solver.linear.linear_model import LinearModel
from setwright.solver.search.candidates import Candidates
from setwright.solver.search.limits import Limits
from setwright.solver.search.neighbourhood_search import NeighbourhoodSearch

WORK = 3.0
"""CP-SAT's work on whether there is a week: without a word by then it counts as none."""


def started(lns: NeighbourhoodSearch) -> bool:
    """Whether the climb has a first week. Where wishes may clash, first whether there is any week at all."""
    if lns.best is not None:
        if lns.refill:
            lns.start()
        return True
    doubtful = any(constrain.wish for constrain in lns.model.constraints)
    if not doubtful:
        lns.start()
    return lns.best is not None or started_somehow(lns, doubtful)


def started_somehow(lns: NeighbourhoodSearch, fill: bool) -> bool:
    """Whether the climb has a week after a look at whether there is any; `fill`: its days were not filled yet."""
    model = feasibility_model(lns.instance)
    found = any_week(model, lns.limits)
    lns.check()
    if found.status == "INFEASIBLE":
        return False
    if fill:
        lns.start()
    if lns.best is None and found.columns is not None:
        move_to(lns, [model.columns[j] for j in sorted(found.columns)])
    return lns.best is not None or lns.start_wider()


def move_to(lns: NeighbourhoodSearch, columns: Sequence[Column]) -> None:
    """Go to the week of some columns, open in every neighbourhood from now on."""
    candidates = opened(lns.candidates, columns)
    place = {column: j for j, column in enumerate(candidates.columns)}
    lns.move(day_model(lns.instance, candidates.columns), candidates, frozenset(place[c] for c in columns))


def any_week(model: LinearModel, limits: Limits) -> CpSatResult:
    """Some week of a sheet by a fixed amount of work, or that there is none."""
    return CpSatModel(model, feasibility_only=True).solve(WORK, limits.seconds)


def widened(lns: NeighbourhoodSearch, wanted: Iterable[Column], limits: Limits) -> NeighbourhoodSearch:
    """A climb of its own at the same week, with some columns added where they lack and open on their days."""
    candidates = opened(lns.candidates, wanted)
    wider = NeighbourhoodSearch(lns.instance, candidates, limits, time.monotonic() + limits.seconds)
    wider.chosen, wider.best, wider.stopped = lns.chosen, lns.best, lns.stopped
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
    mine = [tuple(place[column] for column in more if column.group == day) for day in days]
    ranked = tuple((*candidates.ranked[day], *mine[day]) for day in days)
    return Candidates(columns, ranked, must)
