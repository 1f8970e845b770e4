"""Reduced-cost fixing against every week of a tiny brief: a closed column is in no better week, the best is proved."""

from __future__ import annotations

import math
from dataclasses import replace

import pytest
from tiny import GOALS, incumbent_of, ranking, sound_weeks, tiny

from setwright.solver.engines.highs import ROUNDING
from setwright.solver.linear.columns import Column
from setwright.solver.search.bounding import Bound, is_near
from setwright.solver.search.limits import SEARCHES
from setwright.solver.search.neighbourhood.initial_solution import adopt_columns
from setwright.solver.search.neighbourhood.neighbourhood_search import Incumbent, NeighbourhoodSearch
from setwright.solver.search.reduced_cost_fixing import (
    WIDE,
    columns_for_branching,
    fix_and_branch,
    open_columns,
)
from setwright.solver.search.solve_options import SolveOptions

OPTIONS = SolveOptions(replace(SEARCHES["quick"], fixing_nodes=200, fixing_columns=1_500))
SHARES = (0.0, 0.1, 0.5)
"""How far down the list of all sound weeks the incumbent stands: the best, a good one, a middling one."""


@pytest.mark.parametrize("share", SHARES)
@pytest.mark.parametrize("goal", GOALS)
def test_a_column_that_is_closed_is_in_no_better_week(goal: str, share: float) -> None:
    weeks = sound_weeks(goal)
    incumbent = incumbent_of(tiny(goal), *weeks[int(share * len(weeks))])
    columns = set(open_columns(ranking(goal), incumbent))
    assert set(incumbent.columns) <= columns
    for other, audit in weeks:
        if audit.score_units > incumbent.audit.score_units:
            assert set(other) <= columns


def test_the_best_week_closes_columns_and_a_poor_one_fewer() -> None:
    place, weeks = tiny("balanced"), sound_weeks("balanced")
    best, poor = (open_columns(ranking("balanced"), incumbent_of(place, *weeks[i])) for i in (0, len(weeks) // 2))
    assert len(best) < len(poor) <= len(place.columns)


def branched(goal: str, incumbent: Incumbent, bound: Bound) -> tuple[Column, ...]:
    columns = columns_for_branching(ranking(goal), incumbent, OPTIONS, bound)
    return fix_and_branch(tiny(goal).instance, columns, incumbent, OPTIONS, bound)


@pytest.mark.parametrize("goal", GOALS)
def test_branching_finds_the_best_of_all_weeks_and_bounds_them(goal: str) -> None:
    place, weeks = tiny(goal), sound_weeks(goal)
    bound, incumbent = Bound(), incumbent_of(place, *weeks[len(weeks) // 2])
    lns = NeighbourhoodSearch(incumbent.solver, OPTIONS.limits)
    lns.restore(incumbent)
    columns = branched(goal, incumbent, bound)
    best = weeks[0][1].score_units
    assert columns and bound.value >= best
    adopt_columns(lns, columns)
    assert lns.best is not None and is_near(lns.best, bound.value, OPTIONS)
    # What the model rounds is all that a proof may miss.
    assert best - 300 - ROUNDING <= lns.best.score_units <= best


def test_nothing_is_branched_on_where_it_is_left_out_or_too_many_columns_are_open() -> None:
    weeks, place = sound_weeks("growth"), ranking("growth")
    poor = incumbent_of(tiny("growth"), *weeks[len(weeks) // 2])
    count, near, wide = len(open_columns(place, poor)), Bound(), Bound()
    near.lower(math.floor(poor.audit.score_units + WIDE * poor.audit.stimulus_units))

    def open_with(most: int, bound: Bound) -> int:
        few = SolveOptions(replace(OPTIONS.limits, fixing_columns=most))
        return len(columns_for_branching(place, poor, few, bound))

    assert [open_with(most, near) for most in (0, count - 1, count)] == [0, 0, count]
    assert [open_with(most, wide) for most in (0, count // 2 - 1, count - 1)] == [0, 0, count]
