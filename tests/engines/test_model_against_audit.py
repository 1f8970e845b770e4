"""No week that the audit passes is closed by the model, costs more there, or scores above what the bound rests on."""

from __future__ import annotations

from functools import lru_cache
from itertools import islice
from random import Random

import pytest
from boards import BRIEFS, Week, audited, bounded, cached, held, sound_week

from setwright.solver.engines.build import day_model, pattern_model, week_model
from setwright.solver.engines.highs import ROUNDING

WEEKS = 4
TRIES = 45


@lru_cache(maxsize=64)
def weeks(name: str) -> tuple[Week, ...]:
    """Random weeks of a brief that break no rule."""
    place, random = cached(name), Random(name)
    drawn = (sound_week(place, random, TRIES) for _ in range(5 * WEEKS))
    return tuple(islice((week for week in drawn if not audited(place.instance, week).broken), WEEKS))


@pytest.mark.parametrize("name", BRIEFS)
def test_there_are_sound_weeks_to_look_at(name: str) -> None:
    assert len(weeks(name)) >= 2
    assert any(len(week) > len(cached(name).resolved.days) for week in weeks(name))


@pytest.mark.parametrize("name", BRIEFS)
def test_on_its_days_a_sound_week_is_possible_and_costs_what_the_audit_says(name: str) -> None:
    place = cached(name)
    for week in weeks(name):
        result = audited(place.instance, week)
        here = held(day_model(place.instance, week), week)
        assert here.possible, result.evaluated.week
        assert here.value >= result.score_units - ROUNDING, (result.evaluated.week, result.costs())
        assert here.cost <= result.cost_units + ROUNDING, (result.evaluated.week, result.costs())


@pytest.mark.parametrize("name", BRIEFS)
@pytest.mark.parametrize("level", ["week", "themes"])
def test_without_days_a_sound_week_scores_no_more_than_the_bound(name: str, level: str) -> None:
    place = cached(name)
    model = week_model(place.instance) if level == "week" else pattern_model(place.instance)
    for week in weeks(name):
        result = audited(place.instance, week)
        assert bounded(model, week) >= result.score_units, (result.evaluated.week, result.costs())


@pytest.mark.parametrize("name", ["pairs", "growth", "four days", "two places"])
def test_each_cost_alone_is_never_above_the_audit(name: str) -> None:
    """The held week in the sheet without days: its least cost, curves aside."""
    place = cached(name)
    model = week_model(place.instance)
    for week in weeks(name):
        result = audited(place.instance, week)
        here = held(model, week, curves=False)
        assert here.possible
        assert here.cost <= result.cost_units + ROUNDING, (result.evaluated.week, result.costs())
