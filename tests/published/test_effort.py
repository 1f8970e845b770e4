"""Repetitions in reserve against published growth."""

import pytest

from setwright.solver.evaluation.clock import work_seconds
from setwright.solver.evaluation.curves import SetConditions

RIRS = range(6)  # the curve is used for 0-5 RIR

DIVISOR = 0.36  # SMD of growth that the slope is a share of: a convention


def in_sets(effect):
    """The share of a set that a loss of growth costs: growth goes with the root of sets, so 1 - (1 - x)^2."""
    return 1 - (1 - effect / DIVISOR) ** 2


def test_growth_falls_as_reps_are_left_in_reserve(curves):
    """Robinson et al. 2024, Sports Med 54:2209, doi 10.1007/s40279-024-02069-2 (A): slope negative."""
    credits = [curves.effort(rir, 0) for rir in RIRS]
    assert credits == sorted(credits, reverse=True)
    assert len(set(credits)) == len(credits)
    assert credits[0] == 1
    assert curves.index(credits[-1]) > 0.5 * curves.index(credits[0])


def test_the_slope_is_the_refit_over_the_convention(numbers, published):
    """Refit of the data of Robinson et al. 2024 (B, unconfirmed): -0.019 SMD a RIR [-0.032, -0.006].

    The interval excludes none; the slope and its band are the refit's share of growth, in sets.
    """
    refit, used = published("robinson-2024-slope"), published("rir-slope")
    assert refit.high < 0
    assert used.value == pytest.approx(in_sets(-refit.value), abs=0.004)
    assert used.low == pytest.approx(in_sets(-refit.high), abs=0.002)
    assert used.high == pytest.approx(in_sets(-refit.low), abs=0.002)


def test_going_to_failure_gains_no_more_than_a_trivial_effect(curves, published):
    """Refalo et al. 2023, Sports Med 53:649 (A): set failure ES 0.19 [0.00, 0.37], called trivial.

    Momentary failure only, 0.12 [-0.13, 0.37]. Stopping 1-3 reps short must cost an effect inside both intervals.
    """
    for name in ("refalo-2023-failure", "refalo-2023-momentary-failure"):
        effect = published(name)
        for rir in (1, 2, 3):
            lost = DIVISOR * (1 - curves.index(curves.effort(rir, 0)) / curves.index(curves.effort(0, 0)))
            assert effect.low <= lost <= effect.value


def test_planned_reserves_lie_where_practice_puts_them(numbers, published):
    """Common practice, no source (C): 0-2 RIR for most sets, whatever the goal."""
    least, most = published("practice-rir-least").value, published("practice-rir-most").value
    for name in ("rir-high-fatigue", "rir-other", "rir-novice"):
        assert least <= numbers[name] <= most


def test_planned_reserves_read_as_hard_efforts(numbers, published):
    """Zourdos et al. 2016, J Strength Cond Res 30:267: effort 10 is 0 RIR and 9 is 1 RIR (A); 8 is 2 RIR (M).

    What is planned is an effort of 8 or more; the step from 10 to 9 (A) carries the step from 9 to 8 (M).
    """
    ten, nine, eight = (published(f"zourdos-2016-effort-{k}").value for k in (10, 9, 8))
    assert (nine - ten, eight - nine) == (1, 1)
    assert max(numbers["rir-high-fatigue"], numbers["rir-other"], numbers["rir-novice"]) <= eight


def test_a_reserve_costs_every_set_the_same_share(curves):
    """e(RIR) multiplies the whole exercise: a modelling choice (D)."""
    for rir in RIRS:
        whole = curves.effective(SetConditions(3, 120, 120, 1, 1), "low")
        some = curves.effective(SetConditions(3, 120, 120, rir, 1), "low")
        assert some == pytest.approx(curves.effort(rir, 1) * whole)


def test_stopping_a_few_reps_earlier_saves_only_a_minute_or_two(numbers, published):
    """Common practice, no source (C): a few reps earlier, a minute or two over a whole session of 18 sets.

    Two reps off each set; the bound is the published two minutes.
    """
    full, early = (work_seconds(reps, False, numbers["seconds-per-rep"]) for reps in ((8, 12), (6, 10)))
    assert 60 <= 18 * (full - early) <= 60 * published("practice-earlier-stop-minutes").value
