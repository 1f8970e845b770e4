"""Weekly and per-session volume against published growth."""

import math
from itertools import pairwise

import pytest

WEEK_SETS = range(1, 26)  # Pelland et al. 2024: data are sparse above about 25 (B)


@pytest.fixture(scope="module")
def growth(curves, numbers):
    """The index read back as percentage points, with the slope that cancels in it."""
    at_reference = numbers["week-slope"] * math.sqrt(numbers["index-reference"])
    return lambda weekly: at_reference * curves.index(weekly) / 100


def weekly_index(curves, sets, sessions):
    """The index of so many good sets a week, spread evenly over the sessions."""
    return curves.index(sessions * curves.session(sets / sessions))


def test_the_slope_is_the_published_one_at_its_published_place(growth, published):
    """Pelland et al. 2024, SportRxiv, doi 10.51224/SRXIV.460 (B): 0.24 [0.15, 0.33] % a set at 12.25 sets."""
    slope, at = published("pelland-2024-slope"), published("pelland-2024-slope-at").value
    reckoned = growth(at + 0.5) - growth(at - 0.5)
    assert reckoned == pytest.approx(slope.value, abs=0.002)
    band = published("week-slope")
    assert 2 * slope.low * math.sqrt(at) == pytest.approx(band.low)
    assert 2 * slope.high * math.sqrt(at) == pytest.approx(band.high)


@pytest.mark.parametrize(("sets", "points"), [(4, 3.36), (10, 5.31), (12, 5.82), (20, 7.51)])
def test_the_weekly_curve_has_its_reckoned_values(growth, sets, points):
    """1.68*sqrt(sets), arithmetic (D) on Pelland et al. 2024, SportRxiv, doi 10.51224/SRXIV.460."""
    assert growth(sets) == pytest.approx(points, abs=0.005)


def test_the_index_is_the_weekly_curve_against_ten_sets(curves):
    """The slope cancels: index = 100*f(v)/f(10) = 100*sqrt(v/10) (D); ten sets as the reference is a convention."""
    for sets in WEEK_SETS:
        assert curves.index(sets) == pytest.approx(100 * math.sqrt(sets / 10))


def test_growth_rises_with_diminishing_returns(curves):
    """Pelland et al. 2024, SportRxiv, doi 10.51224/SRXIV.460 (A): rising, diminishing returns."""
    steps = [curves.index(sets + 1) - curves.index(sets) for sets in WEEK_SETS]
    assert all(step > 0 for step in steps)
    assert steps == sorted(steps, reverse=True)


def smallest_steps(published):
    """The published costs of each further smallest step and the edges they add up to."""
    costs = [published(f"pelland-2024-step-{k}").value for k in range(1, 6)]
    return costs, [sum(costs[:k]) for k in range(1, 6)]


def test_the_smallest_steps_cost_more_and_more_sets_as_published(growth, published):
    """Pelland et al. 2024, SportRxiv, doi 10.51224/SRXIV.460 (B): 2.05 % more costs 4, +6, +8.5, +10.75, +12.5 sets.

    The tiers and the curve do not share their zero, so only differences above the first edge are compared. Up to
    25 sets the curve gives each step within 0.25 of a percentage point. Above, where data are sparse, it gives
    less than the published step (1.86 and 1.77 for 2.05): it may understate there, never promise more.
    """
    step, sparse = published("pelland-2024-smallest-step").value, published("pelland-2024-sparse-above").value
    costs, edges = smallest_steps(published)
    assert costs == sorted(costs)
    assert edges == [4, 10, 18.5, 29.25, 41.75]
    for low, high in pairwise(edges):
        reckoned = growth(high) - growth(low)
        assert reckoned <= step
        if high <= sparse:
            assert reckoned == pytest.approx(step, abs=0.25)


def test_every_smallest_step_implies_a_slope_inside_the_published_band(growth, numbers, published):
    """Pelland et al. 2024, SportRxiv, doi 10.51224/SRXIV.460 (B): 1.05-2.31 from the slope's interval (D)."""
    step, band = published("pelland-2024-smallest-step").value, published("week-slope")
    for low, high in pairwise(smallest_steps(published)[1]):
        implied = step / (growth(high) - growth(low)) * numbers["week-slope"]
        assert band.low <= implied <= band.high


def test_steps_of_the_square_root_form_cost_what_the_tiers_cost(growth, numbers, published):
    """Pelland et al. 2024, SportRxiv, doi 10.51224/SRXIV.460 (B): +6 and +8.5 sets for the second and third step.

    From the first edge on, the square root is inverted for each further 2.05 %; costs agree within 1.5 sets. The
    fourth and fifth step lie above 25 sets, where data are sparse, and are left out.
    """
    step, sparse = published("pelland-2024-smallest-step").value, published("pelland-2024-sparse-above").value
    costs, edges = smallest_steps(published)
    edge = edges[0]
    for cost, published_edge in zip(costs[1:], edges[1:], strict=True):
        if published_edge > sparse:
            break
        next_edge = ((growth(edge) + step) / numbers["week-slope"]) ** 2
        assert next_edge - edge == pytest.approx(cost, abs=1.5)
        edge = next_edge


def test_an_extra_set_is_worth_what_the_older_review_says_inside_the_newer_bounds(growth, published):
    """Schoenfeld, Ogborn, Krieger 2017, J Sports Sci 35:1073, doi 10.1080/02640414.2016.1210197 (A): +0.37 % a set.

    A straight line over trials of few sets: the curve's slope must pass through it between 4 and 12 weekly sets.
    """
    slopes = [growth(sets + 1) - growth(sets) for sets in range(4, 12)]
    assert min(slopes) <= published("schoenfeld-2017-slope").value <= max(slopes)


def test_the_classes_of_weekly_sets_rise_by_what_was_published(growth, published):
    """Schoenfeld, Ogborn, Krieger 2017, doi 10.1080/02640414.2016.1210197 (B): <5 sets 5.4 %, 10+ sets 9.8 %.

    A trend only (P = 0.074), and the class means of sets are not published here: 2.5 and 12 stand in, so the
    tolerance is 1.5 percentage points. The middle class, 6.6 % (M), is only asked to lie between.
    """
    few, middle, many = (published(f"schoenfeld-2017-{c}").value for c in ("under-5", "5-to-9", "10-up"))
    assert growth(12) - growth(2.5) == pytest.approx(many - few, abs=1.5)
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


@pytest.mark.parametrize(
    ("few", "many", "told"),
    [
        (("1-set", 1), ("2-to-3-sets", 2.5), "2-to-3-over-1"),
        (("1-set", 1), ("4-to-6-sets", 5), "4-to-6-over-1"),
    ],
)
def test_sets_of_an_exercise_are_worth_what_the_pooled_trials_say(curves, published, few, many, told):
    """Krieger 2010, J Strength Cond Res 24:1150 (A): 0.24 / 0.34 / 0.44 for 1, 2-3 and 4-6 sets of an exercise.

    The differences have intervals: 0.09 (-0.02 to 0.20) and 0.20 (-0.04 to 0.43). The middle of each class stands for
    it, two sessions a week; what the curve takes from the larger effect must lie inside.
    """
    most, difference = published(f"krieger-2010-{many[0]}").value, published(f"krieger-2010-{told}")
    ratio = weekly_index(curves, 2 * few[1], 2) / weekly_index(curves, 2 * many[1], 2)
    assert published(f"krieger-2010-{few[0]}").value / most == pytest.approx(ratio, abs=0.15)
    assert difference.low < most * (1 - ratio) < difference.high


def test_ten_sets_are_the_reference_the_position_stand_names(curves, published):
    """ACSM position stand 2026, Med Sci Sports Exerc (B): about 10 or more weekly sets per muscle for growth."""
    assert curves.index(published("acsm-2026-weekly-sets").value) == pytest.approx(100)


def test_beyond_twenty_sets_little_is_gained_but_nothing_lost(curves, published):
    """Baz-Valle et al. 2022, J Hum Kinet 81:199 (A): 12-20 sets may be an optimum; more is better for triceps only."""
    least, most = published("baz-valle-2022-least").value, published("baz-valle-2022-most").value
    within = (curves.index(most) - curves.index(least)) / (most - least)
    beyond = (curves.index(most + 8) - curves.index(most)) / 8
    assert 0 < beyond < within


def test_twelve_sets_in_one_session_lose_what_frequency_costs(growth, curves, published):
    """Pelland et al. 2024, SportRxiv, doi 10.51224/SRXIV.460 (B): +0.32 % a session [-0.14, 0.82] at equal volume.

    The knee was fitted so that one session instead of two loses 0.39 points (D).
    """
    effect = published("pelland-2024-frequency")
    loss = growth(2 * curves.session(6)) - growth(curves.session(12))
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
    """Remmert et al. 2025, SportRxiv, doi 10.51224/SRXIV.537 (B, weak): benefits diminish from about 11 sets a
    session, no inverted U.

    A soft value: at 11 the next set counts for between a quarter and three quarters, and no set counts below 0.
    """
    near = published("remmert-2025-session").value
    assert 0.25 < curves.session(near + 1) - curves.session(near) < 0.75
    assert all(curves.session(s + 1) > curves.session(s) for s in range(40))
