"""Estimated maxima with their intervals, and what counts as a stall; numbers by hand."""

from __future__ import annotations

from dataclasses import replace
from datetime import timedelta

import numpy as np
import pytest
from logs import BENCH, CATALOGUE, FIRST, RAISE, log_of, sets_of, usual_kits
from weeks import audited, days, terms_of

from setwright.catalogue.faults import UsageFault
from setwright.solver.auditing import Audit
from setwright.solver.evaluation.week import Entry
from setwright.solver.log.values import LoggedSession
from setwright.solver.uses.progress.maximum_course import MaximumEstimate, maximum_course
from setwright.solver.uses.progress.stalls import stalled, stalls

EXERCISES = CATALOGUE.exercises
LINE = Entry(BENCH, 3, (6, 8), 2, 150)


@pytest.fixture(scope="module")
def week() -> Audit:
    lines = ("barbell-bench-press 3 reps=6-8, dumbbell-side-raise 2", "barbell-back-squat 3, machine-side-raise 2")
    return audited(terms_of(days=days("mon thu", 60)), lines)


def test_the_estimate_of_a_session_is_its_best_set_by_both_formulas() -> None:
    """100 kg x 8 with 2 left: Epley 133.3 and Brzycki 133.3 (10 repetitions); one fewer left: 130.0 and 128.6.

    1.73 more (Halperin et al. 2022, upper end): Epley 100 (1 + 11.73/30) = 139.1, Brzycki 3600 / 25.27 = 142.5.
    """
    found = maximum_course(log_of(BENCH, "100x8,7,6 @2"), LINE, CATALOGUE)
    assert len(found) == 1 and found[0].reps == 8
    assert found[0].value == pytest.approx(133.33, abs=0.01)
    assert found[0].low == pytest.approx(3600 / 28, abs=0.01)
    assert found[0].high == pytest.approx(3600 / (37 - 11.73), abs=0.01)
    assert found[0].one_rep == pytest.approx((136.667 + 138.462) / 2 - 133.333, abs=0.01)


def test_without_what_was_left_the_interval_goes_from_none_to_what_was_asked() -> None:
    said, unsaid = (maximum_course(log_of(BENCH, text), LINE, CATALOGUE)[0] for text in ("100x8 @0", "100x8"))
    assert unsaid.low == said.low and unsaid.high > said.high
    assert unsaid.value == said.value


@pytest.mark.parametrize("exercise", ["push-up", "band-curl", "assisted-pull-up", "loaded-pull-up", "plank"])
def test_a_lift_whose_load_is_not_all_that_is_lifted_has_no_estimate(exercise: str) -> None:
    assert maximum_course(log_of(exercise, "20x8 @2"), replace(LINE, exercise=exercise), CATALOGUE) == ()


def test_four_sessions_alike_over_three_weeks_are_a_stall(week: Audit) -> None:
    found = stalls(week, log_of(BENCH, *["80x7,7,7 @2"] * 4, every=7), usual_kits(), "kg")
    assert [stall.exercise for stall in found] == [BENCH]
    stall = found[0]
    assert (stall.since, stall.until) == (FIRST, FIRST + timedelta(days=21))
    assert stall.rise == pytest.approx(0) and stall.effort == "as-asked"
    assert stall.advice == ("sleep-and-effort", "load-back", "another-lift", "change-sets")
    assert stall.back_to is not None and stall.back_to.load == 75
    assert stall.others and all(EXERCISES[e].slot == EXERCISES[BENCH].slot and e != BENCH for e in stall.others)


@pytest.mark.parametrize(
    "texts",
    [
        ["80x6 @2", "80x6 @2", "80x7 @2", "80x7 @2"],
        ["80x7 @2", "80x7 @2", "82.5x7 @2", "82.5x7 @2"],
        ["80x7 @1", "80x7 @1", "80x7 @2", "80x7 @2"],
        ["160x6 @2", "160x6 @2", "162.5x6 @2", "162.5x6 @2"],
    ],
)
def test_one_repetition_more_in_any_form_is_a_rise(week: Audit, texts: list[str]) -> None:
    """A repetition more, the next load, or one more left; 2.5 of 160 kg is 1.6 %, half a repetition about 1.5 %."""
    assert stalls(week, log_of(BENCH, *texts, every=7), usual_kits(), "kg") == ()


def test_a_lighter_week_is_no_rise_and_no_fall(week: Audit) -> None:
    """The best of each half counts: one easy session changes nothing."""
    rising = ["80x6 @2", "80x7 @2", "70x7 @4", "80x8 @2", "80x8 @2"]
    assert stalls(week, log_of(BENCH, *rising, every=7), usual_kits(), "kg") == ()


@pytest.mark.parametrize(("count", "every"), [(3, 14), (4, 6)])
def test_too_few_sessions_or_days_say_nothing(week: Audit, count: int, every: int) -> None:
    assert stalls(week, log_of(BENCH, *["80x7 @2"] * count, every=every), usual_kits(), "kg") == ()


def test_only_the_end_of_the_log_is_looked_at() -> None:
    """A rise long ago does not hide a stall now, and a stall long ago is over."""
    rose = ["70x7 @2", "75x7 @2"] + ["80x7 @2"] * 4
    over = ["70x7 @2"] * 4 + ["75x7 @2", "80x7 @2", "80x7 @2"]
    for texts, count in ((rose, 4), (over, 0)):
        course = maximum_course(log_of(BENCH, *texts, every=7), LINE, CATALOGUE)
        assert len(stalled(course, CATALOGUE)) == count


@pytest.mark.parametrize(("left", "effort"), [("4", "easier"), ("0", "harder")])
def test_effort_is_told_beside_what_is_asked(week: Audit, left: str, effort: str) -> None:
    found = stalls(week, log_of(BENCH, *[f"80x7 @{left}"] * 4, every=7), usual_kits(), "kg")
    assert found[0].effort == effort
    assert stalls(week, log_of(BENCH, *["80x7"] * 4, every=7), usual_kits(), "kg")[0].effort == "unsaid"


def test_what_cannot_be_done_is_not_advised(week: Audit) -> None:
    """With the lightest dumbbell nothing goes back; in a week with every other lift of its slot no other is left."""
    found = stalls(week, log_of(RAISE, *["2x12 @2"] * 4, every=7), usual_kits(), "kg")
    assert found[0].back_to is None and "load-back" not in found[0].advice


def test_loads_of_two_units_are_refused(week: Audit) -> None:
    sessions = [*log_of(BENCH, "80x7"), LoggedSession(FIRST, sets_of(BENCH, "175x7"), unit="lb")]
    with pytest.raises(UsageFault, match="expected kg"):
        stalls(week, sessions, usual_kits(), "kg")


def test_a_last_set_with_drops_says_nothing_of_the_maximum() -> None:
    """Its repetitions are those of all its drops together."""
    line = Entry(RAISE, 3, (12, 15), 1, 60, "drop", 2)
    found = maximum_course(log_of(RAISE, "10x12,12,30 @1"), line, CATALOGUE)
    assert [one.reps for one in found] == [12]


@pytest.mark.parametrize(("a_week", "least", "most"), [(0.0, 0.6, 0.85), (0.5, 0.2, 0.5), (1.0, 0.0, 0.25)])
def test_how_often_a_lift_is_taken_to_stand_still(a_week: float, least: float, most: float) -> None:
    """300 simulated lifts, four sessions in three weeks, each day and each judgement off by 0.7 repetitions (made up).

    One that gains nothing is seen about seven times in ten, one that gains a repetition a week is taken for a stall
    about once in six.
    """
    stood = sum(bool(stalled(simulated_course(a_week, seed), CATALOGUE)) for seed in range(300)) / 300
    print(f"{a_week:g} repetitions a week: {stood:.2f} taken to stand still")
    assert least <= stood <= most


def simulated_course(a_week: float, seed: int) -> tuple[MaximumEstimate, ...]:
    """Sets of seven at 80 kg by someone who could do ten at first."""
    draw = np.random.default_rng(seed)
    texts = []
    for week in range(4):
        left = max(0, round(3 + a_week * week + draw.normal(0, 0.7) + draw.normal(0, 0.7)))
        texts.append(f"80x7,7 @{left},{max(0, left - 1)}")
    return maximum_course(log_of(BENCH, *texts, every=7), LINE, CATALOGUE)
