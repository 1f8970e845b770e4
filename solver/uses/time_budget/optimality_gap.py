"""How far a week is from the best one in its own minutes and kit, and the nearest week that wins most of it back."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass

from setwright.solver.auditing import Audit
from setwright.solver.planning import Unsolved, best_and_nearest
from setwright.solver.search.limits import Limits
from setwright.solver.search.solve_options import SolveOptions

SHARE = 0.05
"""The part of the best week's stimulus that the nearest week may leave (convention)."""


@dataclass(frozen=True)
class Far:
    """The best week found, the nearest week within a share of its stimulus, and what lies between."""

    best: Audit
    near: Audit
    moved: int
    """Sets by which the nearest week differs from the one asked about."""
    share: float
    won: float
    """The part of the score's distance to the best week that the nearest one covers."""
    gap: float
    """Index points by which a better week than the best found is not ruled out."""


def far_from_best(found: Audit, limits: Limits, stopped: Callable[[], bool] = lambda: False) -> Far | Unsolved:
    """The best week of the brief that a week is held against, and the least change of the week that nears it."""
    options = SolveOptions(limits, stopped=stopped)
    end = best_and_nearest(found.evaluated.resolved, found.evaluated.week, SHARE, options)
    if isinstance(end, Unsolved):
        return end
    best, near = end[0].audit, end[1]
    way = best.score_units - found.score_units
    won = (near.audit.score_units - found.score_units) / way if way > 0 else 1.0
    return Far(best, near.audit, near.change, SHARE, won, end[0].gap)
