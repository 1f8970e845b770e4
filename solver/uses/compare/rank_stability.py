"""How sure the order of weeks is: the whole reckoning drawn over the evidence's intervals, the same draw for each."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from itertools import pairwise

from setwright.solver.evaluation.evaluated_week import EvaluatedWeek
from setwright.solver.evaluation.uncertainty import DRAWS, drawn, week_draws
from setwright.solver.uses.compare.sensitivity import Turn, turns


@dataclass(frozen=True)
class Step:
    """Two weeks next to each other in the order: the share of draws in which the higher stays so, and what turns it."""

    higher: int
    lower: int
    difference: float
    share: float
    turns: tuple[Turn, ...]


@dataclass(frozen=True)
class Order:
    """Weeks by stimulus, highest first, as places in what was given; the share of draws that keeps the whole order."""

    ranked: tuple[int, ...]
    share: float
    draws: int
    steps: tuple[Step, ...]


def order_of(evaluated_weeks: Sequence[EvaluatedWeek], count: int = DRAWS) -> Order:
    """The order of some weeks' stimulus and how far the evidence holds it; equal weeks keep the order given."""
    import numpy

    ranked = tuple(sorted(range(len(evaluated_weeks)), key=lambda i: (-round(evaluated_weeks[i].stimulus, 6), i)))
    weeks = [week_draws(evaluated_weeks[i], drawn(evaluated_weeks[i], numpy, count), numpy) for i in ranked]
    kept = [higher > lower for higher, lower in pairwise(weeks)]
    steps = tuple(
        Step(
            a,
            b,
            round(evaluated_weeks[a].stimulus - evaluated_weeks[b].stimulus, 4),
            float(holds.mean()),
            turns(evaluated_weeks[a], evaluated_weeks[b]),
        )
        for (a, b), holds in zip(pairwise(ranked), kept, strict=True)
    )
    whole = float(numpy.all(kept, axis=0).mean()) if kept else 1.0
    return Order(ranked, whole, count, steps)
