"""The bound: the score that no week can pass, from the week without a day index."""

from __future__ import annotations

import math
from collections.abc import Callable
from dataclasses import dataclass

from setwright.solver.auditing import Audit
from setwright.solver.engines import highs
from setwright.solver.engines.build import pattern_model, week_model
from setwright.solver.engines.highs import LinearRelaxation
from setwright.solver.linear.instance import Instance
from setwright.solver.linear.linear_model import LinearModel
from setwright.solver.search.limits import SHORT_DAYS
from setwright.solver.search.solve_options import SolveOptions

CORE = 0.015
"""Columns whose reduced cost is worse than this share of the relaxation's value are left out of branching."""
PROVED = 1e-4
"""The share of the bound within which a score counts as proved: what is left is rounding."""


class Bound:
    """The lowest bound so far, in score units; `lowered` is called whenever it falls."""

    def __init__(self, lowered: Callable[[], None] = lambda: None) -> None:
        self.value = math.inf
        self._lowered = lowered
        self._cancelled = False

    def lower(self, value: float) -> None:
        """Take a bound, if it is lower than the one so far."""
        if value < self.value:
            self.value = value
            self._lowered()

    def cancel(self) -> None:
        """Nobody waits for the bound any more: engines that work on it end at their next look."""
        self._cancelled = True

    def cancelled(self) -> bool:
        """Whether nobody waits for the bound any more."""
        return self._cancelled


def is_proved(score_units: int, bound: float) -> bool:
    """Whether a bound leaves nothing above a score but rounding; both in score units."""
    return math.isfinite(bound) and bound - score_units <= PROVED * abs(bound)


def is_near(best: Audit, bound: float, options: SolveOptions) -> bool:
    """Whether the bound leaves so little above a week that its search may end."""
    return bound - best.score_units <= options.limits.near_enough * best.stimulus_units


def prove_week(week: LinearModel, options: SolveOptions, bound: Bound) -> frozenset[int]:
    """Lower the bound by branching on the week without days; returns the classes in the best such week that it found.

    Where no nodes are allowed the bound is that of the linear relaxation, and there is no such week.
    """
    if not options.limits.nodes:
        bound.lower(highs.outward(highs.relax(week).value))
        return frozenset()
    found = highs.bound(
        week,
        options.limits.nodes,
        options.seconds,
        lambda value: bound.lower(highs.outward(value)),
        bound.cancelled,
        # A search that makes nothing of the solution found does without the heuristic and the restarts that it brings.
        heuristics="one" if options.limits.heuristic_nodes else "none",
        restarts=options.limits.heuristic_nodes > 0,
        looks=options.limits.looks_for(len(week.columns)),
    )
    bound.lower(found.bound)
    return frozenset(week.columns[j].assignments[0].cls for j in found.chosen or ())


@dataclass(frozen=True)
class PatternModel:
    """The week by region patterns of days, and its linear relaxation."""

    model: LinearModel
    relaxed: LinearRelaxation


def relax_patterns(instance: Instance, bound: Bound) -> PatternModel:
    """The week by region patterns, each day one of them; lowers the bound to its relaxation."""
    model = pattern_model(instance)
    relaxed = highs.relax(model)
    bound.lower(highs.outward(relaxed.value))
    return PatternModel(model, relaxed)


def relaxation_bound(instance: Instance) -> float:
    """The score in score units that no week of a brief can pass, by its relaxations alone: quick, and wide.

    In short weeks the relaxation by region patterns of days is no lower than the one without days, and is left out.
    """
    bound = Bound()
    bound.lower(highs.outward(highs.relax(week_model(instance)).value))
    if len(instance.resolved.days) > SHORT_DAYS:
        relax_patterns(instance, bound)
    return bound.value


def prove_patterns(instance: Instance, patterns: PatternModel, options: SolveOptions, bound: Bound) -> None:
    """Lower the bound by branching on the columns near the relaxation by region patterns.

    A week with a column that is left out cannot score more than the relaxation less what that column loses: the bound
    does not go below that, and nothing is branched on where it is below already.
    """
    whole, relaxed = patterns.model, patterns.relaxed
    floor = relaxed.value - CORE * abs(relaxed.value)
    if not options.limits.pattern_nodes or highs.outward(floor) >= bound.value:
        return
    keep = frozenset(
        (whole.groups[c.group].like, c.assignments[0])
        for j, c in enumerate(whole.columns)
        if relaxed.reduced[j] > -CORE * abs(relaxed.value)
        or any(instance.classes[a.cls].exercise.id in instance.resolved.pinned for a in c.assignments)
    )

    def lower(value: float) -> None:
        bound.lower(highs.outward(max(value, floor)))

    def is_done() -> bool:
        return bound.cancelled() or bound.value <= highs.outward(floor)

    core = pattern_model(instance, keep)
    found = highs.bound(core, options.limits.pattern_nodes, options.seconds, lower, is_done, heuristics="none")
    if math.isfinite(found.bound):
        lower(found.bound)
