"""How different two weeks are: by a case worked by hand, and by trying every matching of their days."""

from __future__ import annotations

import itertools
from random import Random

import pytest

from setwright.solver.search.secondary.distance import Kinds, allowed, distance, excess_over, matchings, shared


def kinds(*sets: str) -> Kinds:
    return tuple(frozenset(map(int, day)) for day in sets)


def test_the_distance_worked_by_hand() -> None:
    """Days 123 and 45 against 451 and 239: matched crosswise 2 + 2 of 5 lines are shared, so 1/5 is not."""
    one, two = kinds("123", "45"), kinds("451", "239")
    assert shared(one, two) == (4, (1, 0))
    assert distance(one, two) == distance(two, one) == pytest.approx(0.2)
    assert distance(one, kinds("45", "123")) == 0.0
    assert distance(one, kinds("12", "")) == 0.0, "a part of a week is no other week"


@pytest.mark.parametrize("seed", range(20))
def test_the_matching_is_the_best_of_all(seed: int) -> None:
    random = Random(seed)
    one, two = (tuple(frozenset(random.sample(range(9), random.randint(0, 6))) for _ in range(4)) for _ in range(2))
    every = [
        sum(len(a & two[b]) for a, b in zip(one, order, strict=True)) for order in itertools.permutations(range(4))
    ]
    assert shared(one, two)[0] == max(every)


def test_what_two_different_weeks_may_share_worked_by_hand() -> None:
    """Of 10 lines that differ in 3 tenths 7 may be shared; of 6 exercises that differ in a fifth 4."""
    assert (allowed(10, 0.3), allowed(6, 0.2), allowed(0, 0.3)) == (7, 4, 0)
    kept = kinds("12345")
    assert excess_over(kept, kept) == 2, "5 lines shared, 3 may be"
    assert excess_over(kinds("12367"), kept) == 0
    assert excess_over(kinds("12346"), kept) == 1, "4 lines shared, 3 may be"


def test_short_weeks_are_matched_in_every_way_and_long_ones_turned() -> None:
    assert len(matchings(4)) == 24 and len(set(matchings(4))) == 24
    assert matchings(5)[0] == (0, 1, 2, 3, 4) and len(matchings(5)) == 5
    assert all(sorted(matching) == [0, 1, 2, 3, 4] for matching in matchings(5))
