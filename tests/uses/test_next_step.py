"""The next load up and a lighter one, against brute force over all plates; steps so large that reps go first."""

from __future__ import annotations

import itertools

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from setwright.catalogue.load import load_catalogue
from setwright.solver.uses.loads.buildable import Bar, Built, Steps
from setwright.solver.uses.loads.next_step import lighter, next_load, repetitions_first, step_share

CATALOGUE = load_catalogue()
PLATES = st.lists(st.sampled_from((1.25, 2.5, 5.0, 10.0, 15.0, 20.0, 25.0)), max_size=8).map(tuple)


@settings(max_examples=80, derandomize=True, deadline=None)
@given(PLATES, st.sampled_from((0.0, 10.0, 20.0)), st.floats(0, 220), st.floats(0.5, 1))
def test_next_and_lighter_are_those_of_all_sums_of_plates(
    pairs: tuple[float, ...], bar: float, load: float, share: float
) -> None:
    """Every subset of the pairs is tried, each plate on both ends."""
    ways = [some for n in range(len(pairs) + 1) for some in itertools.combinations(pairs, n)]
    sums = {bar + 2 * sum(some) for some in ways}
    up, down = next_load(Bar(bar, pairs), load), lighter(Bar(bar, pairs), load, share)
    assert (up and up.load) == min((one for one in sums if one > load + 1e-6), default=None)
    assert (down and down.load) == max((one for one in sums if one <= load * share + 1e-6), default=None)
    for built in filter(None, (up, down)):
        assert bar + 2 * sum(built.plates) == pytest.approx(built.load)
        assert len(built.plates) == min(len(some) for some in ways if bar + 2 * sum(some) == pytest.approx(built.load))
        assert not [plate for plate in built.plates if built.plates.count(plate) > pairs.count(plate)]


@settings(max_examples=60, derandomize=True, deadline=None)
@given(st.sampled_from((1.0, 2.0, 2.5, 4.0)), st.sampled_from((0.5, 1.25, 2.0, 5.0)), st.floats(0, 60))
def test_next_and_lighter_of_steps_are_those_of_the_whole_rack(least: float, step: float, load: float) -> None:
    most = least + 20 * step
    rack = [least + place * step for place in range(21)]
    kit = Steps(least, step, most)
    up, down = next_load(kit, load), lighter(kit, load, 1)
    assert (up and up.load) == min((one for one in rack if one > load + 1e-6), default=None)
    assert (down and down.load) == max((one for one in rack if one <= load + 1e-6), default=None)


def test_there_is_nothing_above_all_plates_and_nothing_below_the_bar() -> None:
    assert next_load(Bar(20, (10, 5)), 50) is None
    assert next_load(Bar(20, (10, 5)), 49.9) == Built(50, (10, 5))
    assert lighter(Bar(20, (10, 5)), 20, 0.9) is None
    assert next_load(Bar(20, ()), 5) == Built(20)


@pytest.mark.parametrize(
    ("load", "after", "first"), [(50, 52.5, False), (20, 22, False), (20, 22.5, True), (8, 10, True), (0, 5, True)]
)
def test_a_step_over_ten_per_cent_is_reached_by_repetitions_first(load: float, after: float, first: bool) -> None:
    """ACSM 2009, Med Sci Sports Exerc 41:687: loads rise by 2 to 10 %."""
    assert repetitions_first(load, Built(after), CATALOGUE) is first


def test_the_step_is_a_share_of_the_load_before_it() -> None:
    assert step_share(50, Built(52.5)) == pytest.approx(0.05)
