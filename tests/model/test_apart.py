"""Weeks apart: the distance against one worked by hand; every alternative is sound, near in score and far away."""

from __future__ import annotations

import itertools
import math
from dataclasses import replace
from functools import lru_cache
from random import Random
from typing import Any

import pytest
from boards import days, terms_of

from setwright.solver.auditing import audit
from setwright.solver.linear.columns import instance_of
from setwright.solver.search.limits import SEARCHES
from setwright.solver.search.searching import Outcome, search
from setwright.solver.search.secondary.distance import Kinds, distance, exercises, kinds_of, lines, shared, without
from setwright.solver.search.secondary.diverse_weeks import (
    LEAST_DISTANCE,
    LEAST_OTHER,
    DiverseWeek,
    columns_of,
    diverse_weeks,
    seconds,
)
from setwright.solver.search.secondary.fewest_minutes import fewest_minutes_week

CHEAP = replace(SEARCHES["quick"], rounds=6, work=0.15, nodes=1)
BRIEFS: dict[str, dict[str, Any]] = {
    "gym": {"days": days("mon thu", 35)},
    "efficiency": {"days": days("mon", 25), "goal": "efficiency", "pairs": False},
}
SHARE = 0.05


@lru_cache(maxsize=4)
def outcome(name: str) -> Outcome:
    return search(instance_of(terms_of(**BRIEFS[name])), CHEAP)


@lru_cache(maxsize=4)
def apart(name: str) -> tuple[DiverseWeek, ...]:
    found = outcome(name)
    assert found.best is not None
    return diverse_weeks(found.lns, found.best, 2, SHARE, CHEAP)


def kinds(*sets: str) -> Kinds:
    return tuple(frozenset(map(int, day)) for day in sets)


def test_the_distance_worked_by_hand() -> None:
    """Days 123 and 45 against 451 and 239: matched crosswise 2 + 2 of 5 lines are shared, so 1/5 is not."""
    one, two = kinds("123", "45"), kinds("451", "239")
    assert shared(one, two) == (4, (1, 0))
    assert distance(one, two) == distance(two, one) == pytest.approx(0.2)
    assert distance(one, kinds("45", "123")) == 0.0
    assert distance(one, kinds("12", "")) == 0.0, "a part of a week is no other week"
    assert without(one, two) == 0.0 and without(two, one) == pytest.approx(1 / 6)


@pytest.mark.parametrize("seed", range(20))
def test_the_matching_is_the_best_of_all(seed: int) -> None:
    random = Random(seed)
    one, two = (tuple(frozenset(random.sample(range(9), random.randint(0, 6))) for _ in range(4)) for _ in range(2))
    every = [
        sum(len(a & two[b]) for a, b in zip(one, order, strict=True)) for order in itertools.permutations(range(4))
    ]
    assert shared(one, two)[0] == max(every)


def test_the_columns_of_a_week_make_that_week() -> None:
    lns, best = outcome("gym").lns, outcome("gym").best
    assert best is not None
    mine = {lns.model.columns[j] for j in lns.chosen}
    assert set(columns_of(lns.instance, best.evaluated.week)) == mine


def test_alternatives_are_sound_near_in_score_and_clearly_different() -> None:
    first = outcome("gym").best
    assert first is not None and len(apart("gym")) == 2
    floor = math.ceil(first.score_units - SHARE * first.stimulus_units)
    instance = outcome("gym").lns.instance
    weeks = [kinds_of(instance, a.evaluated.week) for a in (first, *(other.audit for other in apart("gym")))]
    for one, two in itertools.combinations(weeks, 2):
        assert distance(one, two) >= LEAST_DISTANCE
        assert max(without(one, two), without(two, one)) >= LEAST_OTHER
    for other in apart("gym"):
        assert not other.audit.broken and other.audit.score_units >= floor
        again = audit(instance.resolved, other.audit.evaluated.week)
        assert not again.broken and again.score_units == other.audit.score_units
    scores = [other.audit.score_units for other in apart("gym")]
    assert scores == sorted(scores, reverse=True)


def test_what_is_gained_is_no_twin_of_what_was_there() -> None:
    first = outcome("gym").best
    assert first is not None
    instance = outcome("gym").lns.instance
    mine = exercises(kinds_of(instance, first.evaluated.week))
    classes = {member.id: i for i, cls in enumerate(instance.classes) for member in cls.members}
    for other in apart("gym"):
        assert other.gains and all(classes[e] not in mine for e in other.gains)
        assert other.lacks and all(classes[e] in mine for e in other.lacks)
        assert lines(kinds_of(instance, other.audit.evaluated.week)) == len(other.audit.evaluated.week.entries)


def test_the_same_input_gives_the_same_weeks() -> None:
    found = outcome("gym")
    assert found.best is not None
    again = diverse_weeks(found.lns, found.best, 2, SHARE, CHEAP)
    assert [a.audit.evaluated.week for a in again] == [a.audit.evaluated.week for a in apart("gym")]


def test_no_room_in_the_score_gives_no_worse_week() -> None:
    found = outcome("gym")
    assert found.best is not None
    for other in diverse_weeks(found.lns, found.best, 1, 0.0, CHEAP):
        assert other.audit.score_units >= found.best.score_units


def test_efficiency_stays_within_the_seconds_of_the_first() -> None:
    found = outcome("efficiency")
    first = fewest_minutes_week(found.lns, CHEAP).audit
    for other in diverse_weeks(found.lns, first, 1, 0.1, CHEAP, no_longer=True):
        assert seconds(other.audit) <= seconds(first) and not other.audit.broken
