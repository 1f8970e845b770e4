"""Weekly and per-session volume against published growth."""

import math

import pytest

WEEK_SETS = range(1, 26)  # Pelland et al. 2024: data are sparse above about 25 (B)


def growth(numbers, weekly):
    """Percentage points over no training, before the slope cancels in the index."""
    return numbers["week-slope"] * math.sqrt(weekly)


def weekly_index(curves, sets, sessions):
    """The index of so many good sets a week, spread evenly over the sessions."""
    return curves.index(sessions * curves.session(sets / sessions))


def test_the_slope_is_the_published_one_at_its_published_place(numbers, published):
    """Pelland et al. 2024, SportRxiv, doi 10.51224/SRXIV.460 (B): 0.24 [0.15, 0.33] % a set at 12.25 sets."""
    slope, at = published("pelland-2024-slope"), published("pelland-2024-slope-at").value
    reckoned = growth(numbers, at + 0.5) - growth(numbers, at - 0.5)
    assert reckoned == pytest.approx(slope.value, abs=0.002)
    band = published("week-slope")
    assert 2 * slope.low * math.sqrt(at) == pytest.approx(band.low)
    assert 2 * slope.high * math.sqrt(at) == pytest.approx(band.high)


@pytest.mark.parametrize(("sets", "points"), [(4, 3.36), (10, 5.31), (12, 5.82), (20, 7.51)])
def test_the_weekly_curve_has_its_reckoned_values(numbers, sets, points):
    """1.68*sqrt(sets), arithmetic (D) on Pelland et al. 2024, SportRxiv, doi 10.51224/SRXIV.460."""
    assert growth(numbers, sets) == pytest.approx(points, abs=0.005)


def test_the_index_is_the_weekly_curve_against_ten_sets(curves, numbers):
    """The slope cancels: index = 100*f(v)/f(10) (D); ten sets as the reference is a convention."""
    for sets in WEEK_SETS:
        assert curves.index(sets) == pytest.approx(100 * growth(numbers, sets) / growth(numbers, 10))


def test_growth_rises_with_diminishing_returns(curves):
    """Pelland et al. 2024, SportRxiv, doi 10.51224/SRXIV.460 (A): rising, diminishing returns."""
    steps = [curves.index(sets + 1) - curves.index(sets) for sets in WEEK_SETS]
    assert all(step > 0 for step in steps)
    assert steps == sorted(steps, reverse=True)


def test_the_smallest_steps_cost_more_and_more_sets_as_published(numbers, published):
    """Pelland et al. 2024, SportRxiv, doi 10.51224/SRXIV.460 (B): 2.05 % more costs 4, +6, +8.5, +10.75, +12.5 sets.

    The published tiers and the curve do not share their zero, so only the differences above the first edge are
    compared; the curve must give each step within 0.25 of a percentage point of the published 2.05.
    """
    step = published("pelland-2024-smallest-step").value
    costs = [published(f"pelland-2024-step-{k}").value for k in range(1, 6)]
    edges = [sum(costs[:k]) for k in range(1, 6)]
    assert edges == [4, 10, 18.5, 29.25, 41.75]
    for low, high in zip(edges, edges[1:], strict=False):
        assert growth(numbers, high) - growth(numbers, low) == pytest.approx(step, abs=0.25)


def test_steps_of_the_square_root_form_cost_what_the_tiers_cost(numbers, published):
    """Pelland et al. 2024, SportRxiv, doi 10.51224/SRXIV.460 (B): each step costs about 2-2.5 sets more than the last.

    From the first edge on, the square root is inverted for each further 2.05 %; costs agree within 1.5 sets.
    """
    step = published("pelland-2024-smallest-step").value
    edge = published("pelland-2024-step-1").value
    for k in range(2, 6):
        next_edge = ((growth(numbers, edge) + step) / numbers["week-slope"]) ** 2
        assert next_edge - edge == pytest.approx(published(f"pelland-2024-step-{k}").value, abs=1.5)
        edge = next_edge


def test_an_extra_set_is_worth_what_the_older_review_says_inside_the_newer_bounds(numbers, published):
    """Schoenfeld, Ogborn, Krieger 2017, J Sports Sci 35:1073, doi 10.1080/02640414.2016.1210197 (A): +0.37 % a set.

    A straight line over trials of few sets: the curve's slope must pass through it between 4 and 12 weekly sets.
    """
    slopes = [growth(numbers, sets + 1) - growth(numbers, sets) for sets in range(4, 12)]
    assert min(slopes) <= published("schoenfeld-2017-slope").value <= max(slopes)


def test_the_classes_of_weekly_sets_rise_by_what_was_published(numbers, published):
    """Schoenfeld, Ogborn, Krieger 2017, doi 10.1080/02640414.2016.1210197 (B): <5 sets 5.4 %, 10+ sets 9.8 %.

    A trend only (P = 0.074), and the class means of sets are not published here: 2.5 and 12 stand in, so the
    tolerance is 1.5 percentage points. The middle class, 6.6 % (M), is only asked to lie between.
    """
    few, middle, many = (published(f"schoenfeld-2017-{c}").value for c in ("under-5", "5-to-9", "10-up"))
    assert growth(numbers, 12) - growth(numbers, 2.5) == pytest.approx(many - few, abs=1.5)
    assert few < middle < many


def test_four_sets_give_most_of_what_ten_give(curves, published):
    """Iversen et al. 2021, Sports Med 51:2079, doi 10.1007/s40279-021-01490-1 (A): at least 4 weekly sets a muscle.

    Practice (C): under 10 sets are a good stimulus for little time; 20 or more only to maximise a muscle.
    """
    least = published("iversen-2021-weekly-sets").value
    good, most = published("practice-sets-good").value, published("practice-sets-maximised").value
    assert curves.index(least) >= 0.5 * curves.index(good)
    assert curves.index(most) < 2 * curves.index(good)
    assert curves.index(least) / least > curves.index(good) / good > curves.index(most) / most


def test_ten_sets_are_the_reference_the_position_stand_names(curves, published):
    """ACSM position stand 2026, Med Sci Sports Exerc (B): about 10 or more weekly sets per muscle for growth."""
    assert curves.index(published("acsm-2026-weekly-sets").value) == pytest.approx(100)


def test_beyond_twenty_sets_little_is_gained_but_nothing_lost(curves, published):
    """Baz-Valle et al. 2022, J Hum Kinet 81:199 (A): 12-20 sets may be an optimum; more is better for triceps only."""
    least, most = published("baz-valle-2022-least").value, published("baz-valle-2022-most").value
    within = (curves.index(most) - curves.index(least)) / (most - least)
    beyond = (curves.index(most + 8) - curves.index(most)) / 8
    assert 0 < beyond < within


def test_twelve_sets_in_one_session_lose_what_frequency_costs(curves, numbers, published):
    """Pelland et al. 2024, SportRxiv, doi 10.51224/SRXIV.460 (B): +0.32 % a session [-0.14, 0.82] at equal volume.

    The knee was fitted so that one session instead of two loses 0.39 points (D).
    """
    effect = published("pelland-2024-frequency")
    loss = growth(numbers, 2 * curves.session(6)) - growth(numbers, curves.session(12))
    assert loss == pytest.approx(0.39, abs=0.01)
    assert effect.low <= loss <= effect.high


@pytest.mark.parametrize("sets", [6, 7, 8, 9, 10, 11])
def test_frequency_matters_little_at_equal_volume_and_never_hurts(curves, sets):
    """ACSM position stand 2026, Med Sci Sports Exerc (B), Pelland et al. 2024, doi 10.51224/SRXIV.460 (B).

    Over 1, 2 and 3 days a muscle's equal sets change its index by at most 10 %, and never down.
    """
    one, two, three = (weekly_index(curves, sets, days) for days in (1, 2, 3))
    assert one <= two <= three <= 1.10 * one


def test_a_session_counts_in_full_to_the_knee_and_less_beyond(curves, numbers):
    """The knee and the exponential are a modelling choice (D), fitted to Pelland et al. 2024; see the test above."""
    knee = numbers["session-knee"]
    assert [curves.session(s) for s in (0, 1, 3, knee)] == [0, 1, 3, knee]
    steps = [curves.session(knee + k + 1) - curves.session(knee + k) for k in range(20)]
    assert all(0 < step < 1 for step in steps)
    assert steps == sorted(steps, reverse=True)
    assert curves.session(knee + 1e-6) == pytest.approx(knee, abs=1e-5)


def test_a_session_diminishes_near_eleven_sets_and_never_turns_down(curves, published):
    """Remmert et al. 2025, SportRxiv (B, weak): benefits begin to diminish near 11 sets a session, no inverted U.

    A soft value: at 11 the next set counts for between a quarter and three quarters, and no set counts below 0.
    """
    near = published("remmert-2025-session").value
    assert 0.25 < curves.session(near + 1) - curves.session(near) < 0.75
    assert all(curves.session(s + 1) > curves.session(s) for s in range(40))
