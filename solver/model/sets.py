"""Weekly sets as expressions over a sheet's columns, in 1/10,000 set."""

from __future__ import annotations

import math

from setwright.solver.model.sheet import Expression, Sheet


def sets_of(sheet: Sheet, muscle: str, cell: int | None = None) -> Expression:
    """A muscle's fractional credited sets."""
    return sheet.total(lambda e, o: sum(part for m, part in e.contributions if m == muscle) * o.credited, cell)


def direct_sets_of(sheet: Sheet, muscle: str, cell: int | None = None) -> Expression:
    return sheet.total(lambda e, o: 100 * o.credited if muscle in e.direct else 0, cell)


def grain_of(terms: Expression, limit: int) -> int:
    """The largest amount that divides every coefficient and the limit: what a slack counts in."""
    return math.gcd(*terms.values(), limit) or 1
