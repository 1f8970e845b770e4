"""HiGHS from an incumbent over few columns: a sound week that is no worse, of the classes given, or none."""

from __future__ import annotations

from dataclasses import replace
from functools import lru_cache

from tiny import GOALS, incumbent_of, ranking, sound_weeks, tiny

from setwright.solver.auditing import Audit, audit
from setwright.solver.linear.columns import Column
from setwright.solver.search.decoding import week_of
from setwright.solver.search.limits import SEARCHES
from setwright.solver.search.neighbourhood.neighbourhood_search import Incumbent
from setwright.solver.search.restricted_master import improve_incumbent
from setwright.solver.search.solve_options import SolveOptions

OPTIONS = SolveOptions(replace(SEARCHES["quick"], heuristic_nodes=5))
NONE = SolveOptions(replace(SEARCHES["quick"], heuristic_nodes=0))


def never() -> bool:
    return False


@lru_cache
def poor(goal: str) -> Incumbent:
    """A week of fewer classes than the brief has."""
    weeks = sound_weeks(goal)
    few = [(week, audit) for week, audit in weeks if len(classes_of(week)) < len(tiny(goal).instance.classes)]
    return incumbent_of(tiny(goal), *few[len(few) // 2])


def classes_of(columns: tuple[Column, ...]) -> set[int]:
    return {a.cls for column in columns for a in column.assignments}


def audited(columns: tuple[Column, ...]) -> Audit:
    return audit(tiny("growth").resolved, week_of(tiny("growth").instance, [(c.group, c) for c in columns]))


def test_an_incumbent_is_improved_with_the_classes_that_are_in_it() -> None:
    incumbent = poor("growth")
    columns = improve_incumbent(incumbent, ranking("growth"), frozenset(), OPTIONS, never)
    found = audited(columns)
    assert not found.broken and found.score_units >= incumbent.audit.score_units
    assert classes_of(columns) <= classes_of(incumbent.columns)


def test_with_all_classes_it_is_the_best_week() -> None:
    place = tiny("growth")
    everything = frozenset(range(len(place.instance.classes)))
    columns = improve_incumbent(poor("growth"), ranking("growth"), everything, OPTIONS, never)
    best = sound_weeks("growth")[0][1].score_units
    # What the model rounds, by its tangents, is all that may be missed.
    assert best - 300 <= audited(columns).score_units <= best


def test_without_nodes_there_is_none() -> None:
    for goal in GOALS:
        assert improve_incumbent(poor(goal), ranking(goal), frozenset(), NONE, never) == ()
