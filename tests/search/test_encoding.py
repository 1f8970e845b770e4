"""From columns to a week and back: the same columns, or nothing where a line is not open."""

from __future__ import annotations

from dataclasses import replace
from random import Random

import pytest
from boards import cached, sound_week

from setwright.solver.evaluation.week import Week
from setwright.solver.search.decoding import week_of
from setwright.solver.search.encoding import assignment_of, columns_of, open_entries

NAMES = ("home", "pairs", "two places", "sports")


@pytest.mark.parametrize("name", NAMES)
def test_the_columns_of_a_week_are_those_it_was_made_of(name: str) -> None:
    place, random = cached(name), Random(name)
    for _ in range(3):
        columns = sound_week(place, random, 30)
        week = week_of(place.instance, [(column.group, column) for column in columns])
        assert columns and set(columns_of(place.instance, week)) == set(columns)
        assert len(columns_of(place.instance, week)) == len(columns), "a pair is one column"


def test_a_week_with_a_prescription_that_is_not_open_has_no_columns() -> None:
    place = cached("home")
    columns = sound_week(place, Random(1), 30)
    week = week_of(place.instance, [(column.group, column) for column in columns])
    (first, *others), *days = week.days
    odd = replace(first, rest=first.rest + 1)
    assert assignment_of(place.instance, 0, first) is not None
    assert assignment_of(place.instance, 0, odd) is None
    assert columns_of(place.instance, Week(((odd, *others), *days))) == ()
    assert first.exercise in {entry.exercise for entry in open_entries(place.instance, week).values()}


def test_an_exercise_that_the_kit_closes_is_left_out() -> None:
    place, bands = cached("home"), cached("pairs")
    columns = sound_week(place, Random(1), 30)
    week = week_of(place.instance, [(column.group, column) for column in columns])
    closed = {entry.exercise for entry in week.entries} - set(bands.instance.class_of)
    assert closed
    assert not closed & {entry.exercise for entry in open_entries(bands.instance, week).values()}
    assert columns_of(bands.instance, week) == ()
