"""Diverse weeks: each other week is sound, near in score and clearly different from those before it."""

from __future__ import annotations

import itertools
import math
from dataclasses import replace
from functools import lru_cache
from typing import Any

from boards import days, terms_of
from light_search import LIGHT

from setwright.solver.auditing import audit
from setwright.solver.linear.instance import instance_of
from setwright.solver.search.best_week import Outcome, search
from setwright.solver.search.secondary.distance import (
    LEAST_DISTANCE,
    LEAST_OTHER,
    distance,
    exercises,
    kinds_of,
    lines,
)
from setwright.solver.search.secondary.diverse_weeks import DiverseWeek, diverse_weeks
from setwright.solver.search.secondary.fewest_minutes import fewest_minutes_week
from setwright.solver.search.solve_options import SolveOptions

CHEAP = SolveOptions(replace(LIGHT, rounds=6, work=0.15, nodes=0))
BRIEFS: dict[str, dict[str, Any]] = {
    "gym": {"days": days("mon thu", 35)},
    "efficiency": {"days": days("mon", 25), "goal": "efficiency", "pairs": False},
}
SHARE = 0.08


@lru_cache(maxsize=4)
def outcome(name: str) -> Outcome:
    return search(instance_of(terms_of(**BRIEFS[name])), CHEAP)


@lru_cache(maxsize=4)
def apart(name: str) -> tuple[DiverseWeek, ...]:
    found = outcome(name)
    assert found.best is not None
    return diverse_weeks(found.lns, found.best, 2, SHARE, CHEAP)


def test_alternatives_are_sound_near_in_score_and_clearly_different() -> None:
    first = outcome("gym").best
    assert first is not None and len(apart("gym")) == 2
    floor = math.ceil(first.score_units - SHARE * first.stimulus_units)
    instance = outcome("gym").lns.instance
    weeks = [kinds_of(instance, a.evaluated.week) for a in (first, *(other.audit for other in apart("gym")))]
    for one, two in itertools.combinations(weeks, 2):
        assert distance(one, two) >= LEAST_DISTANCE
        mine, theirs = exercises(one), exercises(two)
        assert max(len(mine - theirs) / len(mine), len(theirs - mine) / len(theirs)) >= LEAST_OTHER
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
    for other in apart("gym"):
        assert other.gains and all(instance.class_of[e] not in mine for e in other.gains)
        assert other.lacks and all(instance.class_of[e] in mine for e in other.lacks)
        assert lines(kinds_of(instance, other.audit.evaluated.week)) == len(other.audit.evaluated.week.entries)


def test_the_same_input_gives_the_same_weeks() -> None:
    found = outcome("gym")
    assert found.best is not None
    (again,) = diverse_weeks(found.lns, found.best, 1, SHARE, CHEAP)
    assert again.audit.evaluated.week in [a.audit.evaluated.week for a in apart("gym")]


def test_no_room_in_the_score_gives_no_worse_week() -> None:
    found = outcome("gym")
    assert found.best is not None
    for other in diverse_weeks(found.lns, found.best, 1, 0.0, CHEAP):
        assert other.audit.score_units >= found.best.score_units


def test_efficiency_stays_within_the_seconds_of_the_first() -> None:
    found = outcome("efficiency")
    first = fewest_minutes_week(found.lns, CHEAP).audit
    for other in diverse_weeks(found.lns, first, 1, 0.1, CHEAP, no_longer=True):
        assert other.audit.evaluated.week_seconds <= first.evaluated.week_seconds and not other.audit.broken
