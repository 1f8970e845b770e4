"""How far a week is from the best one in its own minutes and kit, and the nearest week that wins most of it back."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass

from setwright.solver.auditing import Audit
from setwright.solver.planning import Unsolved, best_and_nearest
from setwright.solver.search.limits import Limits
from setwright.solver.search.solve_options import SolveOptions

SHARE = 0.05
"""The part of the best week's stimulus that the nearest week may lack (convention)."""


@dataclass(frozen=True)
class OptimalityGap:
    """The best week found, the nearest week within a share of its stimulus, and what lies between."""

    best: Audit
    near: Audit
    sets_changed: int
    """Sets by which the nearest week differs from the one asked about."""
    share: float
    """The part of the best week's stimulus that the nearest week may lack."""
    regained: float
    """The part of the score's distance to the best week that the nearest one covers, 0 to 1."""
    unproven: float
    """Index points by which a better week than the best found is not ruled out."""


def optimality_gap_of(
    found: Audit, limits: Limits, stopped: Callable[[], bool] = lambda: False
) -> OptimalityGap | Unsolved:
    """The best week of the brief that a week is held against, and the least change of the week that comes near it."""
    options = SolveOptions(limits, stopped=stopped)
    end = best_and_nearest(found.evaluated.resolved, found.evaluated.week, SHARE, options)
    if isinstance(end, Unsolved):
        return end
    best, near = end[0].audit, end[1]
    distance = best.score_units - found.score_units
    regained = (near.audit.score_units - found.score_units) / distance if distance > 0 else 1.0
    return OptimalityGap(best, near.audit, near.change, SHARE, regained, end[0].gap)
