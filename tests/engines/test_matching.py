"""Halves of pairs matched by counts are worth what real pairs are: two statements of one relaxation."""

from __future__ import annotations

import pytest
from boards import days, place_of

from setwright.solver.engines import highs
from setwright.solver.engines.build import build, week_model
from setwright.solver.linear.columns import Column, halves_of_pairs, pair_columns, single_columns, undated_groups

BRIEFS = {
    "bands": {"days": days("mon thu", 25), "equipment": "bands", "pairs": True},
    "walks": {"days": days("mon wed fri", 20), "equipment": "commercial-gym", "goal": "efficiency", "pairs": True},
    "two places": {
        "days": [*days("mon", 20, equipment="commercial-gym"), *days("thu", 20, equipment="home-dumbbells")],
        "goal": "efficiency",
        "pairs": True,
    },
}


@pytest.mark.parametrize("name", BRIEFS)
def test_matched_halves_and_real_pairs_have_one_relaxation(name: str) -> None:
    instance = place_of(**BRIEFS[name]).instance
    groups = undated_groups(instance)
    columns: list[Column] = []
    for group in groups:
        columns += single_columns(instance, group)
        columns += pair_columns(instance, group, halves_of_pairs(instance, group.like))
    pairs, halves = build(instance, groups, columns), week_model(instance)
    assert any(len(column.assignments) == 2 for column in columns)
    assert len(halves.columns) < len(columns)
    apart = highs.relax(halves).value - highs.relax(pairs).value
    # The least that a column gives a muscle, from which its curve's first chord goes up, may be a half's alone.
    assert -1e-6 <= apart / highs.relax(pairs).value <= 1e-3
