"""The bound: what no week can pass, from the week without a day index, beside the climb in a thread of its own."""

from __future__ import annotations

import math
from collections.abc import Callable
from dataclasses import dataclass

from setwright.solver.engines import highs
from setwright.solver.engines.build import pattern_model
from setwright.solver.engines.highs import LinearRelaxation
from setwright.solver.linear.columns import Instance
from setwright.solver.linear.linear_model import LinearModel
from setwright.solver.search.limits import Limits

CORE = 0.015
"""Columns whose reduced cost is worse than this share of the relaxation's value are left out of branching."""


@dataclass
class Bound:
    """The lowest bound so far, in score units."""

    value: float = math.inf
    infeasible: bool = False
    tell: Callable[[float], None] | None = None
    cancelled: bool = False
    """Set when nobody waits for the bound any more."""

    def lower(self, value: float) -> None:
        if value < self.value:
            self.value = value
            if self.tell:
                self.tell(value)


def prove_week(week: LinearModel, limits: Limits, bound: Bound) -> None:
    """Lower the bound by branching on the week without days."""
    found = highs.bound(
        week,
        limits.nodes,
        limits.seconds,
        lambda v: bound.lower(highs.outward(v)),
        lambda: bound.cancelled,
        restarts=True,
    )
    bound.infeasible = found.infeasible
    bound.lower(found.bound)


@dataclass(frozen=True)
class PatternModel:
    """The week by themes of days, and its linear relaxation."""

    model: LinearModel
    relaxed: LinearRelaxation


def relax_patterns(instance: Instance, bound: Bound) -> PatternModel:
    """Lower the bound of a longer week by the relaxation over themes, each day one of them."""
    model = pattern_model(instance)
    relaxed = highs.relax(model)
    bound.lower(highs.outward(relaxed.value))
    return PatternModel(model, relaxed)


def prove_patterns(instance: Instance, patterns: PatternModel, limits: Limits, bound: Bound) -> None:
    """Branch on themes over the columns near the relaxation; those left out bound what they could add."""
    if not limits.pattern_nodes:
        return
    whole, relaxed = patterns.model, patterns.relaxed
    floor = (1.0 - CORE) * relaxed.value
    keep = frozenset(
        (whole.groups[c.group].like, c.assignments[0])
        for j, c in enumerate(whole.columns)
        if relaxed.reduced[j] > -CORE * abs(relaxed.value)
        or any(instance.classes[a.cls].exercise.id in instance.resolved.pinned for a in c.assignments)
    )

    def tell(value: float) -> None:
        bound.lower(highs.outward(max(value, floor)))

    core = pattern_model(instance, keep)
    found = highs.bound(core, limits.pattern_nodes, limits.seconds, tell, lambda: bound.cancelled, proving=True)
    if math.isfinite(found.bound):
        tell(found.bound)
