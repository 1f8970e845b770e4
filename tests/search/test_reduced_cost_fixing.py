"""Reduced-cost fixing against every week of a tiny brief: a closed column is in no better week, the best is proved."""

from __future__ import annotations

from dataclasses import replace

import pytest
from tiny import GOALS, incumbent_of, sound_weeks, tiny

from setwright.solver.engines.highs import ROUNDING
from setwright.solver.search import reduced_cost_fixing as module
from setwright.solver.search.bounding import Bound
from setwright.solver.search.limits import SEARCHES
from setwright.solver.search.neighbourhood.neighbourhood_search import NeighbourhoodSearch
from setwright.solver.search.reduced_cost_fixing import adopt, fix_and_branch, open_columns, relax_all_columns
from setwright.solver.search.solve_options import SolveOptions

MOST_OPEN = module.MOST_OPEN
OPTIONS = SolveOptions(replace(SEARCHES["quick"], fixing_nodes=200))
SHARES = (0.0, 0.1, 0.5)
"""How far down the list of all sound weeks the incumbent stands: the best, a good one, a middling one."""


@pytest.mark.parametrize("share", SHARES)
@pytest.mark.parametrize("goal", GOALS)
def test_a_column_that_is_closed_is_in_no_better_week(goal: str, share: float) -> None:
    place, weeks = tiny(goal), sound_weeks(goal)
    incumbent = incumbent_of(place, *weeks[int(share * len(weeks))])
    week = relax_all_columns(place.instance)
    assert week is not None
    opened = open_columns(week, incumbent)
    columns = {column for column, _ in opened.columns}
    assert {incumbent.solver.model.columns[j] for j in incumbent.chosen} <= columns
    for other, audit in weeks:
        if audit.score_units > opened.least_bound:
            assert set(other) <= columns


def test_the_best_week_closes_columns_and_a_poor_one_fewer() -> None:
    place, weeks = tiny("balanced"), sound_weeks("balanced")
    relaxed = relax_all_columns(place.instance)
    assert relaxed is not None
    best, poor = (open_columns(relaxed, incumbent_of(place, *weeks[i])) for i in (0, len(weeks) // 2))
    assert len(best.columns) < len(poor.columns) <= len(place.columns)


@pytest.mark.parametrize("most", [MOST_OPEN, 6])
@pytest.mark.parametrize("goal", GOALS)
def test_branching_finds_the_best_of_all_weeks_and_bounds_them(
    goal: str, most: int, monkeypatch: pytest.MonkeyPatch
) -> None:
    """Also where HiGHS is given only a few of the open columns: then nothing is called proved."""
    monkeypatch.setattr(module, "MOST_OPEN", most)
    monkeypatch.setattr(module, "BEST", min(most, module.BEST))
    place, weeks = tiny(goal), sound_weeks(goal)
    relaxed, bound = relax_all_columns(place.instance), Bound()
    assert relaxed is not None
    incumbent = incumbent_of(place, *weeks[len(weeks) // 2])
    lns = NeighbourhoodSearch(incumbent.solver, OPTIONS.limits)
    lns.restore(incumbent)
    branched = fix_and_branch(relaxed, incumbent, OPTIONS, bound)
    assert branched is not None
    best = weeks[0][1].score_units
    assert bound.value >= best
    adopt(lns, branched, incumbent)
    assert lns.best is not None and incumbent.audit.score_units <= lns.best.score_units <= best
    if most == MOST_OPEN:
        assert branched.proved
        # What the model rounds is all that a proof may miss.
        assert lns.best.score_units >= best - 300 - ROUNDING
    else:
        assert not branched.proved and branched.open.least_bound > incumbent.audit.score_units


def test_nothing_is_branched_on_where_the_bound_is_near_enough() -> None:
    place, weeks = tiny("growth"), sound_weeks("growth")
    relaxed, bound = relax_all_columns(place.instance), Bound()
    assert relaxed is not None
    bound.lower(float(weeks[0][1].score_units))
    assert fix_and_branch(relaxed, incumbent_of(place, *weeks[0]), OPTIONS, bound) is None
