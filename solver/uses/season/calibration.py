"""Seconds a set made longer until a season's week has no more sets than the reference week in the same time.

A season's week leaves out days, whole exercises and most rules, so that it would fit more sets into the same minutes.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import replace
from typing import Final

from setwright.solver.engines.season.best_week import best_week
from setwright.solver.engines.season.problem import Room, SeasonProblem
from setwright.solver.engines.stopped import Stopped, unstopped
from setwright.solver.evaluation.evaluated_week import WHOLE
from setwright.solver.uses.season.reference_week import ReferenceWeek

TRIES: Final = 3
"""How often the seconds are made longer at most."""
CLOSE: Final = 0.02
"""The share of the reference week's sets within which nothing is changed (convention)."""


def calibrated(
    problem: SeasonProblem, references: Sequence[ReferenceWeek], stopped: Stopped = unstopped
) -> SeasonProblem:
    """The problem with the seconds of each reference's activities in proportion to what the week is too full by.

    Raises StoppedRun.
    """
    for setup, reference in enumerate(references):
        for _ in range(TRIES):
            too_full = fullness(problem, setup, reference, stopped)
            if too_full <= 1 + CLOSE:
                break
            activities = (
                replace(a, seconds=round(a.seconds * too_full)) if a.setup == setup else a for a in problem.activities
            )
            problem = replace(problem, activities=tuple(activities))
    return problem


def fullness(problem: SeasonProblem, setup: int, reference: ReferenceWeek, stopped: Stopped = unstopped) -> float:
    """The sets of a season's week in the reference week's seconds, as a share of that week's own."""
    sets = max(room.sets for room in problem.rooms)
    week = best_week(problem, Room(setup, round(reference.exercise_seconds), sets), (), stopped=stopped)
    own = sum(_half_sets(reference, [muscle.name for muscle in problem.muscles]).values())
    return sum(week.half_sets) / own if own else 1.0


def _half_sets(reference: ReferenceWeek, muscles: Sequence[str]) -> Mapping[str, float]:
    return {muscle: 2 * reference.evaluated.weekly_sets(muscle) / WHOLE for muscle in muscles}
