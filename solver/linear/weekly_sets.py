"""Weekly sets as linear expressions over a model's columns, in 1/10,000 set."""

from __future__ import annotations

import math
from collections.abc import Callable

from setwright.catalogue.entries import Exercise
from setwright.solver.linear.linear_model import Expression, LinearModel


def sets_of(model: LinearModel, muscle: str, group: int | None = None) -> Expression:
    """A muscle's fractional credited sets."""
    return model.product(share_of(muscle), lambda p: p.credited, group)


def share_of(muscle: str) -> Callable[[Exercise], int]:
    """What part of a set of an exercise counts for a muscle, in hundredths."""
    return lambda e: sum(part for m, part in e.contributions if m == muscle) if muscle in e.muscles else 0


def direct_sets_of(model: LinearModel, muscle: str, group: int | None = None) -> Expression:
    """A muscle's credited sets of direct work."""
    return model.product(lambda e: 100 if muscle in e.direct else 0, lambda p: p.credited, group)


def grain_of(expression: Expression, limit: int) -> int:
    """The largest amount that divides every coefficient and the limit: what a slack counts in."""
    return math.gcd(*expression.values(), limit) or 1
