"""Halves of pairs matched by counts are worth what real pairs are: two statements of one relaxation."""

from __future__ import annotations

import pytest
from boards import days, place_of

from setwright.solver.engines import highs
from setwright.solver.engines.build import build, day_model, week_model
from setwright.solver.linear.columns import (
    Column,
    day_groups,
    half_columns,
    halves_of_pairs,
    pair_columns,
    pairs_of,
    single_columns,
    undated_groups,
)
from setwright.solver.search.decoding import columns_with_pairs

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


def test_a_half_whose_partners_are_not_in_the_model_is_closed() -> None:
    """Of some columns only: what stays is a half alone, which is no way to do an exercise."""
    instance = place_of(**BRIEFS["bands"]).instance
    halves = [column for group in day_groups(instance) for column in half_columns(instance, group)]
    alone = day_model(instance, halves[:1])
    assert highs.bound(alone, 10, 60.0).chosen == frozenset()
    first = day_groups(instance)[0]
    pairs = pair_columns(instance, first, halves_of_pairs(instance, first.like))
    beside = {a for pair in pairs for a in pair.assignments if halves[0].assignments[0] in pair.assignments}
    model = day_model(instance, [c for c in halves if c.group == 0 and c.assignments[0] in beside])
    amounts = highs.bound(model, 10, 60.0).amounts
    assert amounts is not None
    found = columns_with_pairs(model, amounts)
    assert found and all(len(column.assignments) == 2 for column in found)


def test_the_pairs_of_like_days_are_those_of_each_day_and_made_once() -> None:
    instance = place_of(**BRIEFS["two places"]).instance
    for group in day_groups(instance):
        pairs = pairs_of(instance, group.like)
        every = pair_columns(instance, group, halves_of_pairs(instance, group.like))
        assert pairs == tuple(pair.assignments for pair in every) and pairs
        assert pairs_of(instance, group.like) is pairs
