"""Whether a brief has any week, and a first good one: much cheaper than a search, without a bound."""

from __future__ import annotations

from dataclasses import dataclass, replace

from setwright.solver.auditing import Audit
from setwright.solver.engines import highs
from setwright.solver.engines.build import day_model, week_model
from setwright.solver.engines.infeasibility import feasibility_model, quickest
from setwright.solver.linear.columns import Column, day_groups, halves_of_pairs, pair_columns, single_columns
from setwright.solver.linear.instance import Assignment, Instance
from setwright.solver.linear.linear_model import LinearModel
from setwright.solver.search.candidates import candidates_of, ranking_of
from setwright.solver.search.limits import SEARCHES
from setwright.solver.search.neighbourhood.initial_solution import adopt_columns, any_week
from setwright.solver.search.neighbourhood.neighbourhood_search import NeighbourhoodSearch
from setwright.solver.search.neighbourhood.neighbourhood_solver import neighbourhood_solver
from setwright.solver.search.neighbourhood.neighbourhoods import Neighbourhood
from setwright.solver.search.solve_options import SolveOptions
from setwright.solver.search.stopping import Interrupted

CHEAP = SolveOptions(replace(SEARCHES["quick"], rounds=4, work=0.2, short_times=1.0, columns=30, fixing_columns=0))
"""Much less than a quick search: a question about a brief asks it many times."""
WEEK_COLUMNS = 90
"""Columns open when the whole week is first searched, shared among its days."""


@dataclass(frozen=True)
class Possible:
    """Whether some week meets every rule and wish, and one that does."""

    able: bool | None
    """None: the work limit came before an answer."""
    week: tuple[Column, ...] = ()


def possible(instance: Instance) -> Possible:
    """Whether a brief has a week, and one if it has.

    Where pairs are open the few columns of pinned pairs are tried first: they are often enough.
    """
    models = (without_free_pairs, feasibility_model) if instance.resolved.pairs else (feasibility_model,)
    for make in models:
        model = make(instance)
        found = any_week(model, CHEAP.seconds)
        if found.columns is not None:
            return Possible(True, tuple(model.columns[j] for j in sorted(found.columns)))
    return Possible(None if found.status == "UNKNOWN" else False)


def without_free_pairs(instance: Instance) -> LinearModel:
    """The week on its days without pairs but those of pinned exercises."""
    columns: list[Column] = []
    for group in day_groups(instance):
        halves = [a for a in halves_of_pairs(instance, group.like) if _in_pinned_pair(instance, a)]
        columns += single_columns(instance, group)
        columns += pair_columns(instance, group, halves)
    return day_model(instance, quickest(instance, columns))


def first_week(instance: Instance, known: tuple[Column, ...] = ()) -> Audit | None:
    """A good week by little work, audited, from one known to be possible or from none; None where none is found."""
    week = week_model(instance)
    candidates = candidates_of(ranking_of(instance, week, highs.relax(week)))
    lns = NeighbourhoodSearch(neighbourhood_solver(instance, candidates, CHEAP.signal()), CHEAP.limits)
    whole = Neighbourhood(tuple(range(lns.days)), max(16, WEEK_COLUMNS // lns.days))
    try:
        lns.search(whole, 2 * CHEAP.limits.work)
        if lns.best is None:
            adopt_columns(lns, known or possible(instance).week)
        if lns.best is not None:
            lns.improve(CHEAP.limits.rounds_for(lns.days))
    except Interrupted:
        pass
    return lns.best


def _in_pinned_pair(instance: Instance, half: Assignment) -> bool:
    """Whether a half's exercise is in a pinned pair."""
    pairs = {e for p in instance.resolved.brief.pins if p.pair_with for e in (p.exercise, p.pair_with)}
    return instance.classes[half.cls].exercise.id in pairs
