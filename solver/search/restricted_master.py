"""Better weeks by HiGHS on few columns of all days at once, at its root node or a little further."""

from __future__ import annotations

from collections.abc import Callable
from collections.abc import Set as AbstractSet
from functools import partial

from setwright.solver.engines import highs
from setwright.solver.engines.build import day_model
from setwright.solver.linear.columns import Column
from setwright.solver.search.bounding import Bound
from setwright.solver.search.candidates import Ranking
from setwright.solver.search.limits import SHORT_DAYS
from setwright.solver.search.neighbourhood.initial_solution import adopt_columns
from setwright.solver.search.neighbourhood.neighbourhood_search import Incumbent, NeighbourhoodSearch
from setwright.solver.search.solve_options import SolveOptions
from setwright.solver.search.worker import Worker, result

COLUMNS_A_DAY = 250
"""Columns that HiGHS sees on each day of a short week, those of the incumbent aside."""
COLUMNS = 600
"""Columns that it sees on all days of a longer week."""


def improve_incumbent(
    incumbent: Incumbent,
    ranking: Ranking,
    others: AbstractSet[int],
    options: SolveOptions,
    cancelled: Callable[[], bool],
) -> tuple[Column, ...]:
    """The week that HiGHS makes, from the incumbent, of the classes in it and of some others; empty where none is."""
    if not options.limits.heuristic_nodes:
        return ()
    held = incumbent.columns
    classes = {a.cls for column in held for a in column.assignments} | others
    days = len(ranking.instance.resolved.days)
    best = ranking.best_of_classes(classes, COLUMNS_A_DAY if days <= SHORT_DAYS else COLUMNS // days)
    columns = tuple(dict.fromkeys((*held, *best)))
    found = highs.bound(
        day_model(ranking.instance, columns),
        options.limits.heuristic_nodes,
        options.seconds,
        None,
        cancelled,
        heuristics="one",
        restarts=True,
        start=range(len(held)),
    )
    return tuple(columns[j] for j in sorted(found.chosen or ()))


def improve_beside_neighbourhoods(
    lns: NeighbourhoodSearch,
    ranking: Ranking,
    others: AbstractSet[int],
    rounds: int,
    options: SolveOptions,
    bound: Bound,
    worker: Worker,
) -> None:
    """Improve a search's week by HiGHS in the worker and so many neighbourhoods here. Raises Interrupted."""
    if incumbent := lns.incumbent():
        improving = worker.begin(partial(improve_incumbent, incumbent, ranking, others, options, bound.cancelled))
        lns.improve(rounds)
        if columns := result(improving, lns.solver.signal.check):
            adopt_columns(lns, columns)
