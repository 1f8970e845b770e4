"""The first week of a search: from nothing, from a feasible week, or from a week of fewer minutes that is filled."""

from __future__ import annotations

from dataclasses import replace
from typing import Any

import pytest
from boards import days, only, terms_of
from light_search import LIGHT

from setwright.solver.engines import highs
from setwright.solver.engines.build import week_model
from setwright.solver.evaluation.week import Week
from setwright.solver.linear.instance import instance_of
from setwright.solver.search.best_week import search
from setwright.solver.search.candidates import candidates_of, ranking_of
from setwright.solver.search.neighbourhood.initial_solution import find_initial_solution
from setwright.solver.search.neighbourhood.neighbourhood_search import NeighbourhoodSearch
from setwright.solver.search.neighbourhood.neighbourhood_solver import neighbourhood_solver
from setwright.solver.search.solve_options import SolveOptions
from setwright.solver.search.stopping import Interrupted, StopSignal

NO_ROUNDS = SolveOptions(replace(LIGHT, rounds=0, nodes=0))


def score(minutes: int, start: Week | None = None, fill_days: bool = False) -> tuple[int, Week]:
    instance = instance_of(terms_of(days=days("mon thu", minutes), equipment="bands"))
    best = search(instance, replace(NO_ROUNDS, workers=1), start, fill_days).best
    assert best is not None
    return best.score_units, best.evaluated.week


def test_the_added_minutes_of_a_longer_week_are_filled() -> None:
    _, shorter = score(20)
    (as_it_was, week), (filled, first) = score(40, shorter), score(40, shorter, fill_days=True)
    assert week == shorter and filled > as_it_was
    assert (filled, first) == score(40, shorter, fill_days=True)
    assert filled > 0.9 * score(40)[0]


def searching(**raw: Any) -> NeighbourhoodSearch:
    """A search of a small brief with its candidates and no week yet."""
    place = instance_of(terms_of(**raw, avoid=only(*FEW)))
    week = week_model(place)
    candidates = candidates_of(ranking_of(place, week, highs.relax(week)))
    return NeighbourhoodSearch(neighbourhood_solver(place, candidates, StopSignal(60.0)), NO_ROUNDS.limits)


FEW = ("band-curl", "push-up", "band-squat", "band-row-to-the-hip", "band-side-raise", "band-pushdown")
BRIEFS: dict[str, dict[str, Any]] = {
    "no wishes": {"days": days("mon thu", 20), "equipment": "bands"},
    "wishes": {
        "days": days("mon thu", 20),
        "equipment": "bands",
        "muscles": {"quads": {"at_least": 3.0}},
        "pins": [{"exercise": "band-curl", "day": "thu", "sets": 2}],
    },
    "even days": {"days": days("mon thu", 20), "equipment": "bands", "goal": "efficiency", "pairs": False},
}


@pytest.mark.parametrize("name", BRIEFS)
def test_a_first_week_is_found_and_is_the_same_each_time(name: str) -> None:
    one, two = searching(**BRIEFS[name]), searching(**BRIEFS[name])
    assert find_initial_solution(one) and find_initial_solution(two)
    assert one.best is not None and two.best is not None and not one.best.broken
    assert one.best.evaluated.week == two.best.evaluated.week
    assert all(one.best.evaluated.on), "every day has a session"


def test_wishes_that_clash_are_known_before_any_day_is_filled(monkeypatch: pytest.MonkeyPatch) -> None:
    lns = searching(days=days("mon", 15), equipment="bands", muscles={"quads": {"at_least": 12.0}})
    monkeypatch.setattr(lns, "search", lambda *_: pytest.fail("a day was filled"))
    assert not find_initial_solution(lns) and lns.best is None


def test_where_days_cannot_be_filled_any_feasible_week_is_taken(monkeypatch: pytest.MonkeyPatch) -> None:
    """Neighbourhoods that find nothing: the week of the feasibility model is adopted, its columns open from then on."""
    lns = searching(**BRIEFS["wishes"])
    monkeypatch.setattr(lns, "search", lambda *_: False)
    before = lns.solver.candidates
    assert find_initial_solution(lns)
    assert lns.best is not None and not lns.best.broken
    assert lns.chosen <= lns.solver.candidates.must
    assert lns.solver.candidates.columns[: len(before.columns)] == before.columns


def test_a_stopped_search_is_interrupted() -> None:
    lns = searching(**BRIEFS["no wishes"])
    stopped = replace(lns.solver, signal=StopSignal(60.0, lambda: True))
    with pytest.raises(Interrupted):
        find_initial_solution(NeighbourhoodSearch(stopped, NO_ROUNDS.limits))
