"""Loads: both formulas worked by hand, plates against brute force, the load to begin with, and what has none."""

from __future__ import annotations

import itertools

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from setwright.catalogue.load import load_catalogue
from setwright.solver.uses.loads.buildable import Bar, Steps
from setwright.solver.uses.loads.kits import usual_kit
from setwright.solver.uses.loads.maximum import Formulas, load_for, maximum_of
from setwright.solver.uses.loads.working_load import DoneSet, working_load

CATALOGUE = load_catalogue()
FORMULAS = Formulas.of(CATALOGUE)
BENCH = CATALOGUE.exercises["barbell-bench-press"]


def test_ten_repetitions_with_a_hundred_are_a_third_more_by_both() -> None:
    """Epley 100 (1 + 10/30), Brzycki 100 x 36 / 27: 133.3 each, worked by hand."""
    found = maximum_of(100, 10, 0, FORMULAS)
    assert found.epley == pytest.approx(133.33, abs=0.01)
    assert found.brzycki == pytest.approx(133.33, abs=0.01)


def test_a_single_is_its_own_maximum_and_what_is_left_counts_as_done() -> None:
    assert maximum_of(140, 1, 0, FORMULAS) == load_for(maximum_of(140, 1, 0, FORMULAS), 1, 0, FORMULAS)
    assert maximum_of(140, 1, 0, FORMULAS).epley == 140
    assert maximum_of(100, 8, 2, FORMULAS) == maximum_of(100, 10, 0, FORMULAS)


@pytest.mark.parametrize("reps", range(2, 37))
def test_brzycki_is_lower_below_ten_repetitions_and_higher_above(reps: int) -> None:
    found = maximum_of(100, reps, 0, FORMULAS)
    assert found.brzycki is not None
    assert (found.brzycki < found.epley) == (reps < 10)
    assert found.lower == min(found.epley, found.brzycki)


def test_from_its_pole_on_brzycki_has_no_value_and_epley_stands_alone() -> None:
    found = maximum_of(40, 37, 0, FORMULAS)
    assert found.brzycki is None and found.lower == found.epley
    assert load_for(found, 8, 2, FORMULAS).brzycki is None


@pytest.mark.parametrize("reps", range(1, 11))
def test_both_formulas_lie_near_the_chart_of_handbooks(reps: int) -> None:
    """Haff and Triplett's chart; its copies differ by up to three points (B), and the formulas by another one."""
    chart = CATALOGUE.evidence[f"load-chart-{reps}"]
    assert chart.low is not None and chart.high is not None
    for whole in (FORMULAS.epley(reps), FORMULAS.brzycki(reps)):
        assert whole is not None
        assert chart.low - 1 <= 100 / whole <= chart.high + 1


PLATES = st.lists(st.sampled_from((1.25, 2.5, 5.0, 10.0, 15.0, 20.0, 25.0)), max_size=7).map(tuple)


@settings(max_examples=60, derandomize=True, deadline=None)
@given(PLATES, st.sampled_from((0.0, 10.0, 20.0)), st.floats(0, 220))
def test_the_load_built_is_the_heaviest_of_all_sums_of_plates(
    pairs: tuple[float, ...], bar: float, load: float
) -> None:
    sums = {bar + 2 * sum(some) for n in range(len(pairs) + 1) for some in itertools.combinations(pairs, n)}
    best = max((one for one in sums if one <= load + 1e-6), default=None)
    built = Bar(bar, pairs).at_most(load)
    assert (built is None) == (best is None)
    if built is not None and best is not None:
        assert built.load == pytest.approx(best)
        assert bar + 2 * sum(built.plates) == pytest.approx(built.load)
        assert list(built.plates) == sorted(built.plates, reverse=True)
        left = list(pairs)
        for plate in built.plates:
            left.remove(plate)


def test_of_two_ways_the_one_with_fewer_plates_is_taken() -> None:
    built = Bar(20, (10, 5, 5)).at_most(40)
    assert built is not None and built.plates == (10,)


def test_steps_end_at_the_most_there_is() -> None:
    dumbbells = Steps(4, 2, 24)
    loads = [dumbbells.at_most(load) for load in (3.9, 4, 15.9, 80)]
    assert [built and built.load for built in loads] == [None, 4, 14, 24]


def test_the_load_to_begin_with_is_no_more_than_either_formula_says() -> None:
    """80 kg x 8 with 2 left is 106.7 kg; for 6 with 2 left Epley says 106.7 / 1.2667 = 84.2: 82.5 can be built."""
    kit = usual_kit(BENCH, "kg", None, None)
    assert kit is not None
    found = working_load(BENCH, DoneSet(80, 8, 2), (6, 8), 2, kit, CATALOGUE)
    assert found.wanted.lower == pytest.approx(84.2, abs=0.05)
    assert found.begin is not None and found.begin.load == 82.5
    assert [built.load for built, _ in found.ramp] == sorted({built.load for built, _ in found.ramp})
    assert all(built.load < 82.5 for built, _ in found.ramp)
    assert not found.unsure


def test_many_repetitions_are_unsure_and_a_light_lifter_may_find_the_bar_too_heavy() -> None:
    kit = usual_kit(BENCH, "kg", None, None)
    assert kit is not None
    assert working_load(BENCH, DoneSet(40, 20, 0), (6, 8), 2, kit, CATALOGUE).unsure
    light = working_load(BENCH, DoneSet(15, 8, 0), (8, 12), 3, kit, CATALOGUE)
    assert light.begin is None and light.ramp == ()


@pytest.mark.parametrize("name", ["push-up", "band-curl"])
def test_a_lift_by_body_weight_or_band_has_no_load_to_choose(name: str) -> None:
    assert usual_kit(CATALOGUE.exercises[name], "kg", None, None) is None
