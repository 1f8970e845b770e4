"""How stable an order is: the same draws for both weeks, and where one number alone reverses it."""

from __future__ import annotations

import math

import numpy
import pytest
from side_weeks import CATALOGUE, view_of

from setwright.solver.evaluation.curves import Curves
from setwright.solver.evaluation.uncertainty import drawn, week_draws
from setwright.solver.uses.compare.rank_stability import ranking_of
from setwright.solver.uses.compare.sensitivity import PARAMETERS, differences, sensitivities

MANY_SHORT = view_of(((("leg-extension", 5, 30),),))
FEW_LONG = view_of(((("leg-extension", 4, 180),),))
"""One low-fatigue lift for quads alone: five sets with next to no rest, four with as much as helps."""
TURNS_AT = 1 / (5 * math.exp(-30 / 33) - 4 * math.exp(-180 / 33))
"""The rest loss a at which both are worth the same, by hand: 5 - 5a*exp(-30/33) = 4 - 4a*exp(-180/33), 0.501."""


def test_the_draws_at_their_values_are_the_index_itself() -> None:
    """Vectors against the plain evaluation, which rounds effective sets to a thousandth."""
    evaluated = view_of(
        ((("barbell-back-squat", 3, 120), ("seated-leg-curl", 3, 60)), (("wide-grip-pulldown", 4, 90),))
    )
    numbers = {key: numpy.full(3, value) for key, value in evaluated.resolved.curves.numbers.items()}
    assert week_draws(evaluated, numbers) == pytest.approx([evaluated.stimulus] * 3, abs=0.01)


def test_each_draw_is_what_a_plain_evaluation_of_its_numbers_gives() -> None:
    """Twenty draws evaluated one at a time, without vectors: one lift, one muscle, one day."""
    draws = drawn(FEW_LONG)
    found = week_draws(FEW_LONG, draws)
    weight = FEW_LONG.resolved.muscles["quads"].weight / FEW_LONG.resolved.weight_sum
    for k in range(20):
        curves = Curves({key: float(values[k]) for key, values in draws.items()})
        sets = curves.effective(FEW_LONG.lines[0].done, "low")
        assert found[k] == pytest.approx(weight * curves.index(curves.session(sets)))


def test_more_of_the_same_is_better_in_every_draw() -> None:
    order = ranking_of([view_of(((("leg-extension", 3, 90),),)), view_of(((("leg-extension", 4, 90),),))])
    assert order.ranked == (1, 0)
    assert order.share == order.pairs[0].share == 1.0
    assert order.draws >= 1000
    assert all(
        found.reversal_factor is None for found in order.pairs[0].sensitivities if found.parameter.name != "rest"
    )


def test_two_weeks_are_drawn_with_the_same_numbers() -> None:
    """Drawn apart, a week would beat its own twin in half the draws; drawn together it never does."""
    twins = [view_of(((("leg-extension", 3, 90),),)) for _ in range(2)]
    order = ranking_of(twins)
    assert order.ranked == (0, 1) and order.share == 0.0 and order.pairs[0].difference == 0.0


def test_the_same_weeks_give_the_same_shares() -> None:
    assert ranking_of([MANY_SHORT, FEW_LONG]) == ranking_of([MANY_SHORT, FEW_LONG])


def test_rest_reverses_the_order_where_the_arithmetic_says() -> None:
    found = {one.parameter.name: one for one in sensitivities(MANY_SHORT, FEW_LONG)}["rest"]
    assert found.reversal_factor is not None
    assert found.reversal_factor * CATALOGUE.evidence["rest-loss-low"].value == pytest.approx(TURNS_AT, rel=1e-3)
    assert found.inside == all(
        (n := CATALOGUE.evidence[key]).low <= found.reversal_factor * n.value <= n.high for key in found.parameter.keys
    )


def test_a_reversal_lies_between_two_signs_and_the_nearest_comes_first() -> None:
    found = sensitivities(MANY_SHORT, FEW_LONG)
    for one in found:
        if one.reversal_factor is None:
            continue
        near = [one.reversal_factor * step for step in (0.99, 1.01)]
        moved = {k: numpy.array([v * f for f in near]) for k, v in zip(one.parameter.keys, one.values, strict=True)}
        below, above = differences(MANY_SHORT, FEW_LONG, moved)
        assert below * above < 0
    factors = [one.reversal_factor for one in found]
    known = [abs(math.log(f)) for f in factors if f is not None]
    assert known == sorted(known) and factors[len(known) :] == [None] * (len(factors) - len(known))


def test_the_share_of_draws_agrees_with_the_reversing_value() -> None:
    """Only rest can reverse this pair: the share is that of draws above the reversing loss, uniform between ends."""
    number = CATALOGUE.evidence["rest-loss-low"]
    assert number.low is not None and number.high is not None
    expected = (number.high - TURNS_AT) / (number.high - number.low)
    assert ranking_of([MANY_SHORT, FEW_LONG]).pairs[0].share == pytest.approx(expected, abs=0.04)


def test_every_number_that_is_drawn_belongs_to_a_parameter() -> None:
    from setwright.solver.evaluation.uncertainty import DRAWN

    assert sorted(DRAWN) == sorted(key for parameter in PARAMETERS for key in parameter.keys)
