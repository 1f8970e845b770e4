"""Robust least squares for a linear model of seconds, with intervals that allow for sessions differing as a whole."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

import numpy as np

from setwright.catalogue.faults import UsageFault, not_installed

if TYPE_CHECKING:
    from numpy.typing import NDArray

CONFIDENCE = 0.9
LEAST_SPREAD = 1.0
"""Seconds: times are never taken to be closer together than a watch shows."""
MAD_TO_SIGMA = 1.4826
"""The standard deviation of a normal distribution in median absolute deviations."""


@dataclass(frozen=True)
class RobustFit:
    """Estimates in the order of the columns, and the half widths of their 90 % intervals."""

    values: tuple[float, ...]
    half_widths: tuple[float, ...]


@dataclass(frozen=True)
class Prior:
    """What is known of the last column's value before the log is read: a value and its standard deviation."""

    value: float
    deviation: float


def robust_fit(
    columns: NDArray[np.float64],
    seconds: NDArray[np.float64],
    groups: NDArray[np.int64],
    kinds: NDArray[np.int64],
    prior: Prior | None = None,
) -> RobustFit:
    """The values that fit `seconds` by soft-L1 loss, so that a telephone call counts little.

    `columns` is (n, p), `seconds` (n,), `groups` (n,) the session of each row, `kinds` (n,) what it measures: rows are
    weighed by the spread of their kind. A prior is one more row of its own deviation. The interval adds up two
    variances: of the log, by a delete-one-session jackknife, with Student's t of one degree of freedom fewer than
    sessions; and of the prior, by the Jacobian. Raises UsageFault where scipy is not installed.
    """
    spread = _spreads(columns, seconds, kinds)
    rows, wanted = columns / spread[:, None], seconds / spread
    names = np.unique(groups)
    if prior is not None:
        row = np.zeros((1, columns.shape[1]))
        row[0, -1] = 1 / prior.deviation
        rows, wanted = np.vstack([rows, row]), np.append(wanted, prior.value / prior.deviation)
        groups = np.append(groups, names[0] - 1)
    values = _fitted(rows, wanted, LOSS_BEND)
    without = np.array([_fitted(rows[groups != name], wanted[groups != name], LOSS_BEND, values) for name in names])
    freedom = len(names) - 1
    of_log = freedom / len(names) * ((without - without.mean(axis=0)) ** 2).sum(axis=0)
    of_prior = np.zeros(len(values)) if prior is None else _of_last_row(rows, wanted, values)
    half = np.sqrt(_student_t(freedom) ** 2 * of_log + _student_t(None) ** 2 * of_prior)
    return RobustFit(tuple(map(float, values)), tuple(map(float, half)))


def _of_last_row(
    rows: NDArray[np.float64], wanted: NDArray[np.float64], values: NDArray[np.float64]
) -> NDArray[np.float64]:
    """The variance that the last row's own uncertainty, of one, leaves in each value."""
    curvature = (1 + ((rows @ values - wanted) / LOSS_BEND) ** 2) ** -1.5
    moved = np.linalg.solve(rows.T @ (curvature[:, None] * rows), rows[-1])
    return np.asarray(moved**2, dtype=np.float64)


def _spreads(
    columns: NDArray[np.float64], seconds: NDArray[np.float64], kinds: NDArray[np.int64]
) -> NDArray[np.float64]:
    """Each row's standard deviation as that of its kind, from the residuals of a fit whose loss is all but absolute."""
    residuals = np.abs(seconds - columns @ _fitted(columns, seconds, LEAST_SPREAD))
    found = np.full(len(seconds), LEAST_SPREAD)
    for kind in np.unique(kinds):
        found[kinds == kind] = max(LEAST_SPREAD, MAD_TO_SIGMA * float(np.median(residuals[kinds == kind])))
    return found


def _fitted(
    columns: NDArray[np.float64],
    seconds: NDArray[np.float64],
    bend: float,
    start: NDArray[np.float64] | None = None,
) -> NDArray[np.float64]:
    """The values of least loss, which turns from square to absolute where a residual is about `bend`."""
    try:
        from scipy.optimize import least_squares
    except ImportError:
        raise UsageFault(not_installed("pace", "scipy", "pace")) from None
    begin = np.linalg.lstsq(columns, seconds, rcond=None)[0] if start is None else start
    found = least_squares(
        lambda theta: columns @ theta - seconds,
        begin,
        jac=lambda theta: columns,
        loss="soft_l1",
        f_scale=bend,
        xtol=TOLERANCE,
        ftol=TOLERANCE,
        gtol=TOLERANCE,
    )
    return np.asarray(found.x, dtype=np.float64)


def _student_t(freedom: int | None) -> float:
    """The quantile of Student's t, or without a freedom of the normal distribution, for a 90 % interval."""
    from scipy.stats import norm, t

    upper = (1 + CONFIDENCE) / 2
    return float(norm.ppf(upper) if freedom is None else t.ppf(upper, freedom))


LOSS_BEND = 2.0
"""Standard deviations about which the loss turns from square to absolute (convention)."""
TOLERANCE = 1e-8
