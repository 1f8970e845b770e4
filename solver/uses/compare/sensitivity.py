"""Which number of the evidence alone could turn the order of two weeks over, and how far it would have to move."""

from __future__ import annotations

import math
from dataclasses import dataclass
from typing import Any

from setwright.solver.evaluation.evaluated_week import EvaluatedWeek
from setwright.solver.evaluation.uncertainty import week_draws


@dataclass(frozen=True)
class Knob:
    """Numbers that mean one thing and move together, and the highest value that still means something."""

    name: str
    keys: tuple[str, ...]
    most: float


KNOBS = (
    Knob("rest", ("rest-loss-high", "rest-loss-low"), 1.0),
    Knob("effort", ("rir-slope",), 0.2),
    Knob("session", ("session-knee",), 30.0),
    Knob("flattening", ("week-exponent",), 1.0),
    Knob("indirect", ("indirect-part",), 1.0),
    Knob("drops", ("drop-credit",), 2.0),
)
"""What is drawn in doubt.py, rest's two losses as one; `most`: a whole set, no credit at 5 RIR, a straight line."""
FARTHEST = 10.0
"""Numbers are moved by at most this factor either way (convention)."""
STEPS = 400


@dataclass(frozen=True)
class Turn:
    """One knob: the difference in week index at its published ends, and where it crosses 0 (None: nowhere)."""

    knob: Knob
    values: tuple[float, ...]
    """The values reckoned with, in the order of the knob's keys."""
    at_ends: tuple[float, float]
    factor: float | None
    """What the values are multiplied by where the order turns, the nearest to 1 by ratio."""
    inside: bool
    """Whether the order turns within the published interval."""


def turns(higher: EvaluatedWeek, lower: EvaluatedWeek) -> tuple[Turn, ...]:
    """Every knob moved alone, those that turn the order first, the nearest first."""
    found = [turn(higher, lower, knob) for knob in KNOBS]
    return tuple(sorted(found, key=lambda t: math.inf if t.factor is None else abs(math.log(t.factor))))


def turn(higher: EvaluatedWeek, lower: EvaluatedWeek, knob: Knob) -> Turn:
    """One knob moved over a grid of factors and to its two ends, all else at its value."""
    import numpy

    evidence, numbers = higher.resolved.catalogue.evidence, higher.resolved.curves.numbers
    values = tuple(numbers[key] for key in knob.keys)
    most = min(FARTHEST, *(knob.most / value for value in values))
    # The grid meets 1 exactly, so that a crossing is looked for on either side of the value itself.
    below = numpy.geomspace(1.0 / FARTHEST, 1.0, STEPS)
    above = numpy.geomspace(1.0, max(most, 1.0), STEPS)[1:]
    factors = numpy.concatenate([below, above])
    ends = [(evidence[key].low, evidence[key].high) for key in knob.keys]
    rows = [
        numpy.concatenate([value * factors, [low if low is not None else value, high if high is not None else value]])
        for value, (low, high) in zip(values, ends, strict=True)
    ]
    difference = differences(higher, lower, dict(zip(knob.keys, rows, strict=True)), numpy)
    factor = crossing(factors, difference[:-2], numpy)
    low, high = (round(float(d), 4) for d in difference[-2:])
    inside = factor is not None and all(
        number.low is not None and number.high is not None and number.low <= factor * value <= number.high
        for number, value in zip((evidence[key] for key in knob.keys), values, strict=True)
    )
    return Turn(knob, values, (low, high), factor, inside)


def differences(higher: EvaluatedWeek, lower: EvaluatedWeek, moved: dict[str, Any], numpy: Any) -> Any:
    """The difference of two weeks' index at each of the moved values, all other numbers as they are."""
    count = len(next(iter(moved.values())))
    draws = {key: numpy.full(count, value) for key, value in higher.resolved.curves.numbers.items()} | moved
    return week_draws(higher, draws, numpy) - week_draws(lower, draws, numpy)


def crossing(factors: Any, difference: Any, numpy: Any) -> float | None:
    """The factor nearest to 1, by ratio, at which the difference falls to 0; straight lines between grid points."""
    sign = difference > 0
    places = numpy.nonzero(sign[1:] != sign[:-1])[0]
    found = []
    for i in places:
        (x0, x1), (y0, y1) = factors[i : i + 2], difference[i : i + 2]
        found.append(float(x0 + (x1 - x0) * y0 / (y0 - y1)))
    return min(found, key=lambda x: abs(math.log(x))) if found else None
