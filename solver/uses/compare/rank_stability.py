"""How stable an order of weeks is: every number drawn over its published range at once, the same for each week."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from itertools import pairwise

from setwright.solver.evaluation.evaluated_week import EvaluatedWeek
from setwright.solver.evaluation.uncertainty import DRAWS, drawn, week_draws
from setwright.solver.uses.compare.sensitivity import Sensitivity, sensitivities


@dataclass(frozen=True)
class RankedPair:
    """Two weeks next to each other in the order, by their places in what was given."""

    higher: int
    lower: int
    difference: float
    """Index points."""
    share: float
    """The share of draws in which the higher week stays the higher."""
    sensitivities: tuple[Sensitivity, ...]
    """What each number alone does to the difference, those that reverse the order first."""


@dataclass(frozen=True)
class Ranking:
    """Weeks by stimulus, highest first, as places in what was given; the share of draws that keeps the whole order."""

    ranked: tuple[int, ...]
    share: float
    draws: int
    pairs: tuple[RankedPair, ...]


def ranking_of(weeks: Sequence[EvaluatedWeek], count: int = DRAWS) -> Ranking:
    """The order of some weeks' stimulus and how often it holds in `count` draws; equal weeks keep the order given."""
    import numpy

    ranked = tuple(sorted(range(len(weeks)), key=lambda i: (-round(weeks[i].stimulus, 6), i)))
    draws = [week_draws(weeks[i], drawn(weeks[i], count)) for i in ranked]
    kept = [higher > lower for higher, lower in pairwise(draws)]
    pairs = tuple(
        RankedPair(
            a,
            b,
            round(weeks[a].stimulus - weeks[b].stimulus, 4),
            float(holds.mean()),
            sensitivities(weeks[a], weeks[b]),
        )
        for (a, b), holds in zip(pairwise(ranked), kept, strict=True)
    )
    whole = float(numpy.all(kept, axis=0).mean()) if kept else 1.0
    return Ranking(ranked, whole, count, pairs)
