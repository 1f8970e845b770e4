"""Whether a brief has any week, and a first good one: much cheaper than a search, without a bound."""

from __future__ import annotations

import time
from dataclasses import dataclass, replace

from setwright.solver.auditing import Audit
from setwright.solver.engines import highs
from setwright.solver.engines.build import day_model, week_model
from setwright.solver.engines.infeasibility import feasibility_model, quickest
from setwright.solver.linear.columns import Column, Instance, day_groups, pair_columns, single_columns
from setwright.solver.linear.linear_model import LinearModel
from setwright.solver.search.candidates import candidates_of
from setwright.solver.search.initial_solution import any_week, move_to
from setwright.solver.search.limits import SEARCHES
from setwright.solver.search.neighbourhood_search import NeighbourhoodSearch, Stopped
from setwright.solver.search.neighbourhoods import Neighbourhood

CHEAP = replace(SEARCHES["quick"], rounds=4, work=0.2, columns=30)
WEEK_COLUMNS = 90
"""Columns open in the first look at the whole week, shared among its days."""


@dataclass(frozen=True)
class Possible:
    """Whether some week meets every rule and wish (None: the work was spent without a word), and one that does."""

    able: bool | None
    week: tuple[Column, ...] = ()


def possible(instance: Instance) -> Possible:
    """Whether there is a week.

    Where pairs are open the few columns of pinned pairs are tried first: they are often enough.
    """
    sheets = (small_model, feasibility_model) if instance.resolved.pairs else (feasibility_model,)
    for make in sheets:
        model = make(instance)
        found = any_week(model, CHEAP)
        if found.columns is not None:
            return Possible(True, tuple(model.columns[j] for j in sorted(found.columns)))
    return Possible(None if found.status == "UNKNOWN" else False)


def small_model(instance: Instance) -> LinearModel:
    """The week on its days without pairs but those of pinned exercises."""
    columns: list[Column] = []
    for group in day_groups(instance):
        here = list(single_columns(instance, (group,), halves=True))
        columns += [c for c in here if not c.assignments[0].prescription.paired]
        columns += pair_columns(
            instance,
            group,
            [c.assignments[0] for c in here if c.assignments[0].prescription.paired and pinned(instance, c)],
        )
    return day_model(instance, quickest(instance, columns))


def pinned(instance: Instance, column: Column) -> bool:
    """Whether a half's exercise is in a pinned pair."""
    pairs = {e for p in instance.resolved.brief.pins if p.pair_with for e in (p.exercise, p.pair_with)}
    return instance.classes[column.assignments[0].cls].exercise.id in pairs


def first_week(instance: Instance, known: tuple[Column, ...] = ()) -> Audit | None:
    """A good week by little work, audited, from one known to be possible or from none; None where none is found."""
    week = week_model(instance)
    lns = NeighbourhoodSearch(
        instance, candidates_of(instance, week, highs.relax(week)), CHEAP, time.monotonic() + CHEAP.seconds
    )
    days = len(instance.resolved.days)
    try:
        lns.try_days(Neighbourhood(tuple(range(days)), max(16, WEEK_COLUMNS // days)), 2 * CHEAP.work)
        if lns.best is None:
            move_to(lns, known or possible(instance).week)
        if lns.best is not None:
            lns.improve(CHEAP.rounds_for(days))
    except Stopped:
        pass
    return lns.best
