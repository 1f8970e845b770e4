"""The candidates of a day: the best by reduced cost first, what the brief pins always open, more added at the end."""

from __future__ import annotations

from functools import lru_cache
from itertools import pairwise

import pytest
from boards import Place, days, place_of

from setwright.solver.engines import highs
from setwright.solver.engines.build import week_model
from setwright.solver.search import candidates as module
from setwright.solver.search.candidates import Candidates, candidates_of, is_pinned, ranking_of

PINNED = {"days": days("mon thu", 30), "equipment": "home-dumbbells", "pins": [{"exercise": "dumbbell-curl"}]}


@lru_cache
def place() -> Place:
    return place_of(**PINNED)


@lru_cache
def undated() -> tuple[Candidates, dict[object, float]]:
    instance = place().instance
    week = week_model(instance)
    relaxed = highs.relax(week)
    reduced = {(week.groups[c.group].like, c.assignments): relaxed.reduced[j] for j, c in enumerate(week.columns)}
    return candidates_of(ranking_of(instance, week, relaxed)), reduced  # type: ignore[return-value]


def test_each_day_lists_its_own_columns_the_best_first() -> None:
    found, reduced = undated()
    instance = place().instance
    assert sorted(j for day in found.ranked for j in day) == list(range(len(found.columns)))
    for day, mine in enumerate(found.ranked):
        assert mine and all(found.columns[j].group == day for j in mine)
        usual = [found.columns[j] for j in mine[: module.SINGLES]]
        worth = [reduced[instance.like_of[day], column.assignments] for column in usual]
        assert all(before >= after for before, after in pairwise(worth))


def test_every_way_to_do_a_pinned_exercise_is_open_on_every_day(monkeypatch: pytest.MonkeyPatch) -> None:
    """With hardly any column kept, those of the pin are there all the same."""
    monkeypatch.setattr(module, "SINGLES", 3)
    instance = place().instance
    week = week_model(instance)
    found = candidates_of(ranking_of(instance, week, highs.relax(week)))
    wanted = {column for column in place().columns if is_pinned(instance, column)}
    assert wanted and {found.columns[j] for j in found.must} == wanted
    assert len(found.columns) <= len(wanted) + 3 * len(found.ranked)


def test_columns_are_added_at_the_end_of_their_day() -> None:
    found, _ = undated()
    few = Candidates(found.columns[:5], ((0, 1, 2, 3, 4), ()), frozenset())
    wanted = (found.columns[2], found.columns[-1], found.columns[-1])
    assert found.columns[-1].group == 1
    wider = few.widened(wanted, always_open=True)
    assert wider.columns == (*few.columns, found.columns[-1])
    assert wider.ranked == ((0, 1, 2, 3, 4), (5,)) and wider.must == {2, 5}
    assert few.widened(wanted, always_open=False).must == frozenset()
    assert wider.places(wanted) == {2, 5}
    with pytest.raises(KeyError):
        few.places(wanted)
