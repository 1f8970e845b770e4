"""How good the best week of a search is so far, as its page is told."""

from __future__ import annotations

import math
from typing import Any

from setwright.solver.auditing import Audit
from setwright.solver.evaluation.finding import UNITS
from setwright.solver.search.solve_options import Progress


def figures_of(progress: Progress, best: Audit) -> dict[str, Any]:
    """The best week's index, and the points that the best there can be may lie above it, as far as they are known."""
    gap = (progress.bound - progress.score) / UNITS
    return {"index": round(best.stimulus, 1), "gap": round(max(0.0, gap), 2) if math.isfinite(gap) else None}
