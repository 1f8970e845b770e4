"""The first week of a search: filled day by day or as a whole, from any feasible week where that fails."""

from __future__ import annotations

from collections.abc import Sequence

from setwright.solver.engines.cpsat import CpSatModel, CpSatResult
from setwright.solver.engines.infeasibility import feasibility_model
from setwright.solver.linear.columns import Column
from setwright.solver.linear.linear_model import LinearModel
from setwright.solver.search.neighbourhood.neighbourhood_search import NeighbourhoodSearch
from setwright.solver.search.neighbourhood.neighbourhood_solver import neighbourhood_solver
from setwright.solver.search.neighbourhood.neighbourhoods import Neighbourhood

FEASIBILITY_WORK = 3.0
"""CP-SAT's deterministic time on whether there is any week; where it cannot tell by then, none is taken from it."""
WIDER = (4, 16)
"""Times the usual work and columns with which the whole week is tried again where no week was found."""


def find_initial_solution(lns: NeighbourhoodSearch, fill_days: bool = False) -> bool:
    """Give a search its first week; whether it has one. Raises Interrupted.

    Where wishes may contradict each other, a cheap look at whether there is any week comes first. A search that has a
    week keeps it; with `fill_days` its days are first filled further, one by one, as in a week from nothing.
    """
    if lns.best is not None:
        if fill_days:
            fill_week(lns)
        return True
    doubtful = any(constraint.wish for constraint in lns.solver.model.constraints)
    if not doubtful:
        fill_week(lns)
    return lns.best is not None or _from_any_week(lns, doubtful)


def fill_week(lns: NeighbourhoodSearch) -> None:
    """Fill the week day by day, or as a whole where constraints tie its days together. Raises Interrupted."""
    tied = _days_are_tied(lns.solver.model)
    if not tied:
        for day in range(lns.days):
            lns.search(Neighbourhood((day,), 2 * lns.limits.columns), lns.limits.first_work)
    if tied or lns.best is None:
        lns.search(_whole_week(lns.days, 1), 2 * lns.limits.first_work)


def any_week(model: LinearModel, seconds: float) -> CpSatResult:
    """Some week of a linear model by a fixed amount of work, or that there is none; `seconds` is a wall-clock limit."""
    return CpSatModel(model, feasibility_only=True).solve(FEASIBILITY_WORK, seconds)


def adopt_columns(lns: NeighbourhoodSearch, columns: Sequence[Column]) -> bool:
    """Take the week of some columns if it is better, and keep them open in every neighbourhood from then on."""
    candidates = lns.solver.candidates.widened(columns, always_open=True)
    solver = neighbourhood_solver(lns.instance, candidates, lns.solver.signal)
    return lns.accept_from(solver, candidates.places(columns))


def _from_any_week(lns: NeighbourhoodSearch, fill: bool) -> bool:
    """Whether the search has a week after a look at whether there is any; `fill`: its days were not filled yet."""
    model = feasibility_model(lns.instance)
    found = any_week(model, lns.solver.signal.seconds_left())
    lns.solver.signal.check()
    if found.status == "INFEASIBLE":
        return False
    if fill:
        fill_week(lns)
    if lns.best is None and found.columns is not None:
        adopt_columns(lns, [model.columns[j] for j in sorted(found.columns)])
    for times in WIDER:
        if lns.best is None:
            lns.search(_whole_week(lns.days, times), 2 * times * lns.limits.first_work)
    return lns.best is not None


def _days_are_tied(model: LinearModel) -> bool:
    """Whether days hang together from the start: by wishes that must be met, or by efficiency's even days."""
    return any(constraint.wish or constraint.rule == "day-share" for constraint in model.constraints)


def _whole_week(days: int, times: int) -> Neighbourhood:
    """All days at once, so many times the usual columns open on them."""
    return Neighbourhood(tuple(range(days)), times * max(40, 240 // days))
