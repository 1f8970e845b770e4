"""Every number of the evidence file says where it comes from and how far to trust it."""

import pytest

MARKS = ("A", "B", "C", "D", "M")


def test_every_number_has_a_source_a_reading_a_unit_and_a_mark(catalogue):
    for number in catalogue.evidence.values():
        assert number.mark in MARKS, number.id
        assert number.source and number.reading and number.unit, number.id


def test_every_interval_holds_its_value(catalogue):
    for number in catalogue.evidence.values():
        assert (number.low is None) == (number.high is None), number.id
        if number.low is not None and number.high is not None:
            assert number.low <= number.value <= number.high, number.id


def test_common_practice_says_that_it_has_no_source(catalogue):
    """Mark C is practice or convention, and nothing else."""
    for number in catalogue.evidence.values():
        if number.mark == "C":
            assert number.source in ("common practice, no source", "convention"), number.id


def test_numbers_from_memory_say_so_and_drive_nothing(catalogue):
    """Mark M stands only beside published values, never in a number the reckoning uses."""
    from_memory = [n for n in catalogue.evidence.values() if n.mark == "M"]
    assert from_memory
    for number in from_memory:
        assert "from memory" in number.reading, number.id
        assert number.id in ("schoenfeld-2017-5-to-9", "singer-2024-enough", "zourdos-2016-effort-8")


@pytest.mark.parametrize(
    ("name", "low", "high"),
    [
        ("rest-loss-high", 0.25, 0.75),
        ("rest-loss-low", 0.10, 0.60),
        ("indirect-part", 0.25, 0.75),
        ("drop-credit", 0.25, 0.75),
        ("session-knee", 4, 8),
        ("week-exponent", 0.35, 0.65),
        ("rir-slope", 0.017, 0.089),
        ("week-slope", 1.05, 2.31),
    ],
)
def test_the_ranges_behind_an_interval_are_the_stated_ones(catalogue, name, low, high):
    """Conventions where no source gives an interval; the two slopes follow from published intervals (D)."""
    assert (catalogue.evidence[name].low, catalogue.evidence[name].high) == (low, high)


@pytest.mark.parametrize(
    ("name", "deviation", "people", "quantile"),
    [
        ("fink-2018-drop", 3.7, 8, 2.365),
        ("fink-2018-straight", 2.1, 8, 2.365),
        ("prestes-2019-rest-pause", 14, 9, 2.306),
        ("prestes-2019-straight", 7, 9, 2.306),
        ("buresh-2009-long", 7.2, 6, 2.571),
        ("buresh-2009-short", 2.9, 6, 2.571),
        ("kojic-2022-rectus-femoris", 0.15, 18, 2.110),
        ("rogerson-2024-lighter-week", 1.7, 246, 1.970),
        ("rogerson-2024-every", 2.3, 246, 1.970),
    ],
)
def test_the_interval_of_a_mean_comes_from_its_standard_error(catalogue, name, deviation, people, quantile):
    """What is published is the standard deviation between people (A), which is no bound of a mean.

    The interval is the mean +- the quantile of Student's t (people - 1 degrees of freedom, 95 %) standard errors (D).
    """
    number = catalogue.evidence[name]
    half = quantile * deviation / people**0.5
    step = 0.006 if number.value < 1 else 0.06
    assert number.low == pytest.approx(number.value - half, abs=step)
    assert number.high == pytest.approx(number.value + half, abs=step)
    assert "standard error" in number.reading


def test_one_limb_against_both_is_an_effect_size(catalogue):
    """Kassiano et al. 2025, Sports Med 55:923, doi 10.1007/s40279-024-02169-z (A): -0.21 (-3.56 to 3.13), an ES.

    Its strength effects fix the sign: +0.56 for both limbs tested together, -0.65 for one tested alone.
    """
    number = catalogue.evidence["kassiano-2025-one-limb"]
    assert number.unit == "ES"
    assert "below 0 favours one limb" in number.reading
    assert number.low < 0 < number.high
