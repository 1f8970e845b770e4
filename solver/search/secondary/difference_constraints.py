"""Constraints that keep a week clearly different from kept ones, each with a variable for what is shared too much."""

from __future__ import annotations

from collections.abc import Iterable, Sequence

from setwright.solver.linear.linear_model import Expression, LinearModel, combined
from setwright.solver.search.secondary.distance import (
    LEAST_DISTANCE,
    LEAST_OTHER,
    Kinds,
    allowed,
    exercises,
    lines,
    matchings,
)

RULE = "apart"
"""What the constraints are posted under; no rule of the rulebook."""
MOST_EXCESS = 100
"""Lines or exercises that a week can share too many."""


class DifferenceConstraints:
    """Constraints on a linear model of the week on its days, which is changed, against each of some kept weeks."""

    def __init__(self, model: LinearModel, kept: Sequence[Kinds]) -> None:
        self._model, self._kept = model, kept
        self._excess = [model.variable(MOST_EXCESS) for _ in kept]
        self._posted: set[tuple[int, tuple[int, ...]]] = set()
        for week in range(len(kept)):
            for matching in matchings(len(model.resolved.days)):
                self.post_matching(week, matching)
        self._post_exercises()

    def total(self) -> Expression:
        """What the week shares too much with all kept weeks together: the sum to be made least."""
        return dict.fromkeys(self._excess, 1)

    def hold(self) -> None:
        """Allow no excess from now on."""
        for variable in self._excess:
            self._model.high[variable] = 0

    def post_matching(self, week: int, matching: tuple[int, ...]) -> None:
        """Hold the lines shared with a kept week under one matching of days: of its lines, and of the week's own."""
        if (week, matching) in self._posted:
            return
        self._posted.add((week, matching))
        model, kinds, excess = self._model, self._kept[week], self._excess[week]
        same = {j: sum(a.cls in kinds[matching[c.group]] for a in c.assignments) for j, c in enumerate(model.columns)}
        model.constrain(RULE, combined(same, {excess: -1}), high=allowed(lines(kinds), LEAST_DISTANCE))
        keep = round(100 * (1.0 - LEAST_DISTANCE))
        own = {j: 100 * same[j] - keep * len(c.assignments) for j, c in enumerate(model.columns)}
        model.constrain(RULE, combined(own, {excess: -100}), high=0)

    def post_seconds(self, most: int, days: Iterable[int]) -> None:
        """Hold the week's seconds, with what the sessions of `days` take beside their exercises, within those given."""
        model = self._model
        given = {g: -2 for g in model.given if g is not None}
        overhead = sum(model.resolved.days[day].overhead for day in days)
        model.constrain(RULE, combined(*model.work, given), high=2 * (most - overhead))

    def _post_exercises(self) -> None:
        """Hold the exercises shared with each kept week, wherever they stand."""
        model = self._model
        used = {cls: model.variable(1) for cls in sorted(frozenset().union(*map(exercises, self._kept)))}
        for columns in model.by_group:
            for cls, variable in used.items():
                here = {j: 1 for j in columns if any(a.cls == cls for a in model.columns[j].assignments)}
                model.constrain(RULE, combined(here, {variable: -1}), high=0)
        for kinds, excess in zip(self._kept, self._excess, strict=True):
            mine = exercises(kinds)
            shared = combined({used[cls]: 1 for cls in sorted(mine)}, {excess: -1})
            model.constrain(RULE, shared, high=allowed(len(mine), LEAST_OTHER))
