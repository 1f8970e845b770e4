"""The bound is never below the best of all weeks of a tiny brief, by either road, and only falls."""

from __future__ import annotations

import math
from dataclasses import replace

import pytest
from tiny import GOALS, sound_weeks, tiny

from setwright.solver.engines.build import week_model
from setwright.solver.search.bounding import Bound, prove_patterns, prove_week, relax_patterns
from setwright.solver.search.limits import SEARCHES
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


def test_a_bound_only_falls_and_says_so_each_time() -> None:
    heard: list[float] = []
    bound = Bound(lambda: heard.append(bound.value))
    for value in (5.0, 7.0, 5.0, 3.0, math.inf):
        bound.lower(value)
    assert heard == [5.0, 3.0] and bound.value == 3.0
    assert not bound.cancelled()
    bound.cancel()
    assert bound.cancelled()
