"""Which number of the evidence alone would reverse the order of two weeks, and how far it would have to move."""

from __future__ import annotations

import math
from dataclasses import dataclass
from typing import TYPE_CHECKING, Any

from setwright.solver.evaluation.evaluated_week import EvaluatedWeek
from setwright.solver.evaluation.pairing.partner_effect import PAIR_LOSSES
from setwright.solver.evaluation.uncertainty import week_draws

if TYPE_CHECKING:
    import numpy as np

    Values = np.ndarray[Any, Any]


@dataclass(frozen=True)
class Parameter:
    """Numbers of the evidence that mean one thing and move together."""

    name: str
    keys: tuple[str, ...]
    """Their ids."""
    highest: float
    """The highest value that still means something."""


PARAMETERS = (
    Parameter("rest", ("rest-loss-high", "rest-loss-low"), 4.0),
    Parameter("effort", ("rir-slope",), 0.2),
    Parameter("session", ("session-knee",), 30.0),
    Parameter("flattening", ("week-exponent",), 1.0),
    Parameter("indirect", ("indirect-part",), 1.0),
    Parameter("drops", ("drop-credit",), 2.0),
    Parameter("rest-pause", ("rest-pause-credit",), 5.0),
    Parameter("pairs", PAIR_LOSSES, 0.3),
)
"""What evaluation/uncertainty.py draws, the losses of rest as one, those of pairs as one.

Their highest values: no credit under about 50 s of rest, no credit at 5 RIR, more sets than any session holds, a
straight line, an indirect set that is a whole one, two sets, five sets, three tenths of every set."""
FARTHEST = 10.0
"""Numbers are moved by at most this factor either way (convention)."""
STEPS = 400
"""Factors tried on either side of 1, evenly spaced by ratio."""


@dataclass(frozen=True)
class Sensitivity:
    """What one parameter alone does to the difference between two weeks."""

    parameter: Parameter
    values: tuple[float, ...]
    """The values in force, in the order of the parameter's keys."""
    at_ends: tuple[float, float]
    """The difference in week index at the two ends of the published range."""
    reversal_factor: float | None
    """What the values are multiplied by where the order reverses, the nearest to 1 by ratio; None: nowhere."""
    inside: bool
    """Whether the order reverses within the published range."""


def sensitivities(higher: EvaluatedWeek, lower: EvaluatedWeek) -> tuple[Sensitivity, ...]:
    """Every parameter moved alone, those that reverse the order first, the nearest first."""
    found = [_sensitivity(higher, lower, parameter) for parameter in PARAMETERS]
    return tuple(sorted(found, key=_distance))


def _distance(found: Sensitivity) -> float:
    """How far the parameter must move to reverse the order, by ratio."""
    return math.inf if found.reversal_factor is None else abs(math.log(found.reversal_factor))


def _sensitivity(higher: EvaluatedWeek, lower: EvaluatedWeek, parameter: Parameter) -> Sensitivity:
    """One parameter moved over a grid of factors and to its two ends, all else at its value."""
    import numpy

    evidence, numbers = higher.resolved.catalogue.evidence, higher.resolved.curves.numbers
    values = tuple(numbers[key] for key in parameter.keys)
    most = min(FARTHEST, *(parameter.highest / value for value in values))
    # The grid meets 1 exactly, so that a crossing is looked for on either side of the value itself.
    below = numpy.geomspace(1.0 / FARTHEST, 1.0, STEPS)
    above = numpy.geomspace(1.0, max(most, 1.0), STEPS)[1:]
    factors = numpy.concatenate([below, above])
    ends = [(evidence[key].low, evidence[key].high) for key in parameter.keys]
    rows = [
        numpy.concatenate([value * factors, [low if low is not None else value, high if high is not None else value]])
        for value, (low, high) in zip(values, ends, strict=True)
    ]
    difference = differences(higher, lower, dict(zip(parameter.keys, rows, strict=True)))
    factor = _crossing(factors, difference[:-2])
    low, high = (round(float(d), 4) for d in difference[-2:])
    inside = factor is not None and all(
        number.low is not None and number.high is not None and number.low <= factor * value <= number.high
        for number, value in zip((evidence[key] for key in parameter.keys), values, strict=True)
    )
    return Sensitivity(parameter, values, (low, high), factor, inside)


def differences(higher: EvaluatedWeek, lower: EvaluatedWeek, moved: dict[str, Values]) -> Values:
    """The difference of two weeks' index at each of the moved values, all other numbers as they are."""
    import numpy

    count = len(next(iter(moved.values())))
    draws = {key: numpy.full(count, value) for key, value in higher.resolved.curves.numbers.items()} | moved
    return week_draws(higher, draws) - week_draws(lower, draws)


def _crossing(factors: Values, difference: Values) -> float | None:
    """The factor nearest to 1, by ratio, at which the difference falls to 0; straight lines between grid points."""
    import numpy

    sign = difference > 0
    places = numpy.nonzero(sign[1:] != sign[:-1])[0]
    found = []
    for i in places:
        (x0, x1), (y0, y1) = factors[i : i + 2], difference[i : i + 2]
        found.append(float(x0 + (x1 - x0) * y0 / (y0 - y1)))
    return min(found, key=lambda x: abs(math.log(x))) if found else None
