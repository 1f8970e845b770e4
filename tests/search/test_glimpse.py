"""A first week is shown while it is still being solved, and showing it changes nothing of what is found."""

from __future__ import annotations

from dataclasses import replace

import pytest
from light_search import LIGHT

from setwright.catalogue.load import load_catalogue
from setwright.solver.brief.file import parse_phrase
from setwright.solver.planning import Solved, plan
from setwright.solver.rulebook import RULES
from setwright.solver.search.neighbourhood.neighbourhood_search import NeighbourhoodSearch
from setwright.solver.search.solve_options import Progress, SolveOptions

LITTLE = replace(LIGHT, rounds=2, work=0.05, nodes=0, pattern_nodes=0)


def test_a_first_week_is_told_before_it_is_taken_and_the_week_found_is_the_same(
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    catalogue = load_catalogue()
    parsed = parse_phrase("2 days x 30 min, home dumbbells", catalogue, tuple(RULES))
    happened: list[str] = []
    accept = NeighbourhoodSearch.accept

    def accepted(self: NeighbourhoodSearch, columns: frozenset[int]) -> bool:
        happened.append("taken")
        return accept(self, columns)

    def watch(progress: Progress) -> None:
        if progress.best is not None:
            assert not progress.best.broken and progress.score == progress.best.score_units
            happened.append("told")

    monkeypatch.setattr(NeighbourhoodSearch, "accept", accepted)
    alone = plan(parsed, catalogue, SolveOptions(LITTLE, workers=1))
    happened.clear()
    watched = plan(parsed, catalogue, SolveOptions(LITTLE, workers=1, watch=watch))
    assert isinstance(alone, Solved) and isinstance(watched, Solved)
    assert watched.audit.evaluated.week == alone.audit.evaluated.week
    assert watched.bound_units == alone.bound_units
    assert happened[0] == "told"
