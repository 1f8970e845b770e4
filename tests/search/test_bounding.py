"""The bound is never below the best of all weeks of a tiny brief, by either road, and only falls."""

from __future__ import annotations

import math
from dataclasses import replace
from random import Random

import pytest
from boards import audited, cached, sound_week
from tiny import GOALS, sound_weeks, tiny

from setwright.solver.engines import highs
from setwright.solver.engines.build import week_model
from setwright.solver.search.bounding import CORE, Bound, prove_patterns, prove_week, relax_patterns
from setwright.solver.search.limits import MANY_COLUMNS, SEARCHES
from setwright.solver.search.solve_options import SolveOptions

NODES = (0, 1, 50)


@pytest.mark.parametrize("nodes", NODES)
@pytest.mark.parametrize("goal", GOALS)
def test_no_week_passes_the_bound_without_days(goal: str, nodes: int) -> None:
    bound = Bound()
    prove_week(week_model(tiny(goal).instance), SolveOptions(replace(SEARCHES["quick"], nodes=nodes)), bound)
    best = sound_weeks(goal)[0][1]
    assert best.score_units <= bound.value < math.inf


@pytest.mark.parametrize("nodes", NODES)
@pytest.mark.parametrize("goal", GOALS)
def test_no_week_passes_the_bound_by_region_patterns(goal: str, nodes: int) -> None:
    bound, instance = Bound(), tiny(goal).instance
    patterns = relax_patterns(instance, bound)
    relaxed = bound.value
    prove_patterns(instance, patterns, SolveOptions(replace(SEARCHES["quick"], pattern_nodes=nodes)), bound)
    best = sound_weeks(goal)[0][1]
    assert best.score_units <= bound.value <= relaxed < math.inf


def test_without_nodes_the_relaxation_is_the_bound() -> None:
    bound, instance = Bound(), tiny("growth").instance
    patterns = relax_patterns(instance, bound)
    relaxed = bound.value
    prove_patterns(instance, patterns, SolveOptions(replace(SEARCHES["quick"], pattern_nodes=0)), bound)
    assert bound.value == relaxed


def test_no_branching_where_the_bound_is_below_all_that_it_could_prove(monkeypatch: pytest.MonkeyPatch) -> None:
    """Columns are left out of the branching, and the bound stays above what a week with one of them may score."""
    bound, instance, asked = Bound(), tiny("growth").instance, SolveOptions(replace(SEARCHES["quick"], pattern_nodes=1))
    patterns, runs = relax_patterns(instance, bound), []
    real = highs.bound
    monkeypatch.setattr(highs, "bound", lambda *given, **more: runs.append(given) or real(*given, **more))
    least = highs.outward(patterns.relaxed.value - CORE * abs(patterns.relaxed.value))
    bound.lower(least + 1.0)
    prove_patterns(instance, patterns, asked, bound)
    assert len(runs) == 1 and least <= bound.value
    bound.lower(least)
    prove_patterns(instance, patterns, asked, bound)
    assert len(runs) == 1 and bound.value == least


def test_fewer_looks_prove_less_and_the_same_each_time() -> None:
    """HiGHS ends within its root: the bound holds, and is between that of the relaxation and that of the whole root."""
    place = cached("home")
    best, week = audited(place.instance, sound_week(place, Random(1), 60)), week_model(place.instance)
    looked = [highs.bound(week, 1, 60.0, heuristics="none", looks=looks).bound for looks in (5, 5, 8, None)]
    assert looked[0] == looked[1] and looked == sorted(looked, reverse=True) and looked[0] > looked[-1]
    assert best.score_units < looked[-1] and looked[0] <= highs.outward(highs.relax(week).value)


def test_only_a_week_of_many_columns_is_cut_short() -> None:
    assert [SEARCHES[name].looks_for(MANY_COLUMNS) for name in SEARCHES] == [None] * 3
    assert [SEARCHES[name].looks_for(MANY_COLUMNS + 1) for name in ("quick", "normal", "thorough")] == [8, None, None]


def test_a_bound_only_falls_and_says_so_each_time() -> None:
    heard: list[float] = []
    bound = Bound(lambda: heard.append(bound.value))
    for value in (5.0, 7.0, 5.0, 3.0, math.inf):
        bound.lower(value)
    assert heard == [5.0, 3.0] and bound.value == 3.0
    assert not bound.cancelled()
    bound.cancel()
    assert bound.cancelled()
