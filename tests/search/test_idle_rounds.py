"""Neighbourhoods that find nothing better, one after the other, are given up until something better is found."""

from __future__ import annotations

from dataclasses import replace

import pytest
from tiny import incumbent_of, ranking, sound_weeks, tiny

from setwright.solver.search.candidates import candidates_of
from setwright.solver.search.limits import SEARCHES
from setwright.solver.search.neighbourhood.neighbourhood_search import NeighbourhoodSearch
from setwright.solver.search.neighbourhood.neighbourhood_solver import neighbourhood_solver
from setwright.solver.search.stopping import StopSignal

PATIENCE = 3


@pytest.fixture
def search() -> NeighbourhoodSearch:
    """A search that stands at the poorest sound week of the tiny brief."""
    candidates = candidates_of(ranking("growth"))
    solver = neighbourhood_solver(tiny("growth").instance, candidates, StopSignal(60.0))
    found = NeighbourhoodSearch(solver, replace(SEARCHES["quick"], idle_rounds=PATIENCE))
    found.restore(incumbent_of(tiny("growth"), *sound_weeks("growth")[-1]))
    return found


def test_no_more_are_tried_once_so_many_found_nothing(search: NeighbourhoodSearch) -> None:
    tried = search.improve(20)
    assert search.best is not None
    assert search.best.score_units == sound_weeks("growth")[0][1].score_units, "the best is found first"
    assert PATIENCE < tried < 20
    assert search.improve(20) == 0


def test_a_better_week_from_elsewhere_begins_the_count_anew(search: NeighbourhoodSearch) -> None:
    search.improve(20)
    search.restore(incumbent_of(tiny("growth"), *sound_weeks("growth")[-1]))
    assert search.improve(2) == 2
