"""A brief so small that all its weeks can be listed, with the audit of each."""

from __future__ import annotations

import itertools
from functools import lru_cache
from typing import Any

from boards import Place, Week, audited, days, only, place_of

from setwright.solver.auditing import Audit
from setwright.solver.engines import highs
from setwright.solver.engines.build import week_model
from setwright.solver.linear.columns import Column
from setwright.solver.search.candidates import Candidates, Ranking, ranking_of
from setwright.solver.search.neighbourhood.neighbourhood_search import Incumbent
from setwright.solver.search.neighbourhood.neighbourhood_solver import neighbourhood_solver
from setwright.solver.search.stopping import StopSignal

TINY: dict[str, Any] = {
    "days": days("mon", 14),
    "equipment": "bands",
    "avoid": only("band-curl", "push-up", "band-squat"),
    "techniques": False,
    "client": {"experience": "intermediate"},
    "pairs": False,
}
GOALS = ("balanced", "growth", "efficiency")


@lru_cache(maxsize=4)
def tiny(goal: str) -> Place:
    """One day of fourteen minutes and three exercises."""
    return place_of(**TINY, goal=goal)


@lru_cache(maxsize=4)
def sound_weeks(goal: str) -> tuple[tuple[Week, Audit], ...]:
    """Every week of the tiny brief that breaks no rule, the best score first."""
    place = tiny(goal)
    found = [(week, audited(place.instance, week)) for week in choices(place.columns)]
    sound = [(week, audit) for week, audit in found if not audit.broken]
    return tuple(sorted(sound, key=lambda pair: -pair[1].score_units))


def ranking(goal: str) -> Ranking:
    """The brief's columns by the relaxation of its week without days."""
    instance = tiny(goal).instance
    week = week_model(instance)
    return ranking_of(instance, week, highs.relax(week))


def choices(columns: tuple[Column, ...]) -> list[Week]:
    """Every choice of a day's columns with at most one for each class."""
    classes = sorted({column.assignments[0].cls for column in columns})
    ways = [[None, *(c for c in columns if c.assignments[0].cls == cls)] for cls in classes]
    return [tuple(c for c in choice if c is not None) for choice in itertools.product(*ways)]


def incumbent_of(place: Place, week: Week, audit: Audit) -> Incumbent:
    """A week as a search would hold it, every column of the brief among the candidates."""
    candidates = Candidates(place.columns, (tuple(range(len(place.columns))),), frozenset())
    solver = neighbourhood_solver(place.instance, candidates, StopSignal(60.0))
    return Incumbent(solver, candidates.places(week), audit)
