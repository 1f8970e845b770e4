"""Neighbourhoods: endless, the same on every call, of days that there are, and every day comes up."""

from __future__ import annotations

from itertools import islice

import pytest

from setwright.solver.search.neighbourhood.neighbourhoods import neighbourhoods

MANY = 400


@pytest.mark.parametrize("days", range(1, 8))
def test_they_never_end_and_are_the_same_on_every_call(days: int) -> None:
    first, again = (tuple(islice(neighbourhoods(days, 50), MANY)) for _ in range(2))
    assert len(first) == MANY and first == again
    assert len(set(first)) > 2


@pytest.mark.parametrize("days", range(1, 8))
def test_they_free_days_of_the_week_and_each_day_again_and_again(days: int) -> None:
    drawn = tuple(islice(neighbourhoods(days, 50), MANY))
    for place in drawn:
        assert place.days == tuple(sorted(set(place.days))) and place.days
        assert set(place.days) <= set(range(days))
        assert place.columns > 0
    counts = [sum(day in place.days for place in drawn) for day in range(days)]
    assert min(counts) > 0.5 * max(counts)


@pytest.mark.parametrize("days", range(2, 8))
def test_the_whole_week_is_freed_for_classes_in_use_alone(days: int) -> None:
    whole = {place for place in islice(neighbourhoods(days, 50), MANY) if place.used}
    assert whole and all(place.days == tuple(range(days)) for place in whole)
