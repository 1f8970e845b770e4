"""The stimulus: each muscle's concave curve over a linear model's columns, and its tangents."""

from __future__ import annotations

import math
from dataclasses import dataclass
from functools import lru_cache

from setwright.solver.evaluation.curves import Curves
from setwright.solver.evaluation.finding import UNITS
from setwright.solver.linear.linear_model import LinearModel, StimulusCurve
from setwright.solver.linear.weekly_sets import share_of

SET = 100_000
"""Effective sets are whole numbers of 1/100,000: hundredths of a contribution times thousandths of a set."""
SESSION_POINTS = (5.9, 6.4, 7.0, 7.7, 8.5, 9.5, 10.6, 11.9, 13.4)
WEEK_POINTS = 28


def post_stimulus(model: LinearModel) -> None:
    """Add the curve of every muscle that counts and can be trained."""
    resolved = model.resolved
    for muscle in resolved.muscles.values():
        if not muscle.weight:
            continue
        groups = []
        for group in model.groups:
            found = model.product(share_of(muscle.id), lambda o: o.effective, group.index)
            if found:
                groups.append((group.index, tuple(sorted(found.items()))))
        if groups:
            most = resolved.curves.session(resolved.day_cap) * len(resolved.days)
            if muscle.exact_high and not resolved.off("exact-band"):
                most = min(most, muscle.high)
            weight = muscle.weight / resolved.weight_sum * UNITS
            model.curves.append(StimulusCurve(muscle.id, weight, tuple(groups), most))


@dataclass(frozen=True)
class Tangent:
    """A line that lies nowhere below a concave curve: y <= slope * x + at, in sets."""

    slope: float
    at: float


def session_tangents(curves: Curves) -> tuple[Tangent, ...]:
    """Lines above h: the diagonal, and tangents past the knee."""
    knee, scale = curves.numbers["session-knee"], curves.numbers["session-scale"]
    found = [Tangent(1.0, 0.0)]
    for point in SESSION_POINTS:
        if point > knee:
            slope = math.exp(-(point - knee) / scale)
            found.append(Tangent(slope, curves.session(point) - slope * point))
    return tuple(found)


def session_intercept(curves: Curves, slope: float) -> float:
    """The least `at` for which slope * s + at lies nowhere below h(s)."""
    knee, scale = curves.numbers["session-knee"], curves.numbers["session-scale"]
    touch = knee - scale * math.log(min(max(slope, 1e-9), 1.0))
    return curves.session(touch) - slope * touch


@lru_cache(maxsize=256)
def week_points(least: float, most: float) -> tuple[float, ...]:
    """Where the week's curve is touched: evenly spread by ratio between the least and most good sets."""
    top = max(most, 1.01 * least)
    return tuple(least * (top / least) ** (i / (WEEK_POINTS - 1)) for i in range(WEEK_POINTS))


def week_slope(curves: Curves, weight: float, point: float) -> float:
    """The slope of weight * index at so many weekly sets."""
    power = curves.numbers["week-exponent"]
    return weight * curves.index(point) * power / point


def week_intercept(curves: Curves, weight: float, slope: float) -> float:
    """The least `at` for which slope * U + at lies nowhere below weight * index(U)."""
    power, reference = curves.numbers["week-exponent"], curves.numbers["index-reference"]
    touch = float(reference * (slope * reference / (100.0 * weight * power)) ** (1.0 / (power - 1.0)))
    return weight * curves.index(touch) - slope * touch


def least_sets(model: LinearModel, curve: StimulusCurve) -> float:
    """The smallest weekly stimulus U that any one column gives: below it lies only 0."""
    smallest = min(amount for _, found in curve.groups for _, amount in found)
    return model.resolved.curves.session(smallest / SET)
