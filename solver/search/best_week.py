"""The search for the week of the best score, with a bound that no week can pass."""

from __future__ import annotations

import math
import time
from collections.abc import Callable
from dataclasses import dataclass
from functools import partial

from setwright.solver.auditing import Audit
from setwright.solver.engines import highs
from setwright.solver.engines.build import week_model
from setwright.solver.evaluation.week import Week
from setwright.solver.linear.instance import Instance
from setwright.solver.search.bounding import Bound, is_proved
from setwright.solver.search.candidates import candidates_of, ranking_of
from setwright.solver.search.courses.given import Given
from setwright.solver.search.courses.long_week import search_long_week
from setwright.solver.search.courses.short_days import has_short_days, search_short_days
from setwright.solver.search.courses.short_week import search_short_week
from setwright.solver.search.encoding import columns_of
from setwright.solver.search.limits import SHORT_DAYS
from setwright.solver.search.neighbourhood.initial_solution import find_initial_solution
from setwright.solver.search.neighbourhood.neighbourhood_search import NeighbourhoodSearch
from setwright.solver.search.neighbourhood.neighbourhood_solver import neighbourhood_solver
from setwright.solver.search.solve_options import Progress, SolveOptions
from setwright.solver.search.stopping import EndedBy, Interrupted
from setwright.solver.search.worker import Worker

Course = Callable[[Given], None]
"""How neighbourhoods, bound and branching take turns. Raises Interrupted."""


@dataclass(frozen=True)
class Outcome:
    """The end of a search."""

    best: Audit | None
    """The audit of the best week; None where none was found."""
    bound: float
    """Score units that no week can pass; inf where nothing was proven."""
    ended_by: EndedBy
    lns: NeighbourhoodSearch
    """To go on from."""


def _course_for(instance: Instance) -> Course:
    """How to search for a week of such days, and of so many."""
    if has_short_days(instance):
        return search_short_days
    return search_short_week if len(instance.resolved.days) <= SHORT_DAYS else search_long_week


def search(instance: Instance, options: SolveOptions, start: Week | None = None, fill_days: bool = False) -> Outcome:
    """Neighbourhoods and bound, in two threads beside each other or one after the other: the result is the same.

    With `start` the search goes on from that week, if all its lines are open in the brief and it breaks nothing; with
    `fill_days` its days are filled further first, one by one, as they are in a week from nothing.
    """
    begun, options = time.monotonic(), options.started()
    signal = options.signal()

    def tell() -> None:
        if options.watch:
            best = lns.best or lns.glimpsed
            score = best.score_units if best else -math.inf
            options.watch(Progress(score, bound.value, time.monotonic() - begun, best))

    bound = Bound(tell)
    week = week_model(instance)
    relaxed = highs.relax(week)
    ranking = ranking_of(instance, week, relaxed)
    candidates = candidates_of(ranking)
    warm = columns_of(instance, start) if start else ()
    candidates = candidates.widened(warm, always_open=False)
    solver = neighbourhood_solver(instance, candidates, signal)
    lns = NeighbourhoodSearch(solver, options.limits, tell if options.watch else None)
    bound.lower(highs.outward(relaxed.value))
    worker = Worker(options.workers)
    ended_by = EndedBy.WORK_LIMIT
    try:
        if warm:
            lns.accept(candidates.places(warm))
        _course_for(instance)(
            Given(week, ranking, lns, options, bound, worker, partial(find_initial_solution, lns, fill_days))
        )
        # An engine that the wall-clock limit ended may have been the last to work: nobody has looked since.
        signal.check()
    except Interrupted as interrupted:
        ended_by = interrupted.ended_by
    finally:
        bound.cancel()
        fault = worker.end()
    if fault:
        raise fault
    if lns.best is not None and is_proved(lns.best.score_units, bound.value):
        ended_by = EndedBy.PROVED
    return Outcome(lns.best, bound.value, ended_by, lns)
