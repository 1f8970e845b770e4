"""The restricted master: a sound week of candidates, from none or from an incumbent, or none where it is left out."""

from __future__ import annotations

from dataclasses import replace
from functools import lru_cache

from tiny import incumbent_of, sound_weeks, tiny

from setwright.solver.auditing import audit
from setwright.solver.search.limits import SEARCHES
from setwright.solver.search.neighbourhood.neighbourhood_search import Incumbent
from setwright.solver.search.restricted_master import improve_incumbent, solve_restricted_master
from setwright.solver.search.solve_options import SolveOptions

OPTIONS = SolveOptions(replace(SEARCHES["quick"], heuristic_nodes=5))
NONE = SolveOptions(replace(SEARCHES["quick"], heuristic_nodes=0))


def never() -> bool:
    return False


@lru_cache
def middling() -> Incumbent:
    weeks = sound_weeks("growth")
    return incumbent_of(tiny("growth"), *weeks[len(weeks) // 2])


def test_it_finds_a_good_week_from_none() -> None:
    weeks, incumbent = sound_weeks("growth"), middling()
    chosen = solve_restricted_master(tiny("growth").instance, incumbent.solver.candidates, OPTIONS, never)
    assert chosen is not None
    found = audit(tiny("growth").resolved, incumbent.solver.week(chosen))
    assert not found.broken
    assert weeks[len(weeks) // 10][1].score_units <= found.score_units <= weeks[0][1].score_units


def test_an_incumbent_is_improved_with_the_classes_that_are_in_it() -> None:
    incumbent = middling()
    chosen = improve_incumbent(incumbent, OPTIONS, never)
    assert chosen is not None
    found = audit(tiny("growth").resolved, incumbent.solver.week(chosen))
    assert not found.broken and found.score_units >= incumbent.audit.score_units
    columns = incumbent.solver.model.columns
    used = {a.cls for j in incumbent.chosen for a in columns[j].assignments}
    assert {a.cls for j in chosen for a in columns[j].assignments} <= used


def test_without_nodes_there_is_none() -> None:
    incumbent = middling()
    assert solve_restricted_master(tiny("growth").instance, incumbent.solver.candidates, NONE, never) is None
    assert improve_incumbent(incumbent, NONE, never) is None
