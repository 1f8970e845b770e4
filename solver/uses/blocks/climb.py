"""How a run of build weeks climbs to the solved week: which step of fewer sets each of them stands on."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from functools import cache
from math import floor

from setwright.catalogue.defaults import BlockDefaults
from setwright.solver.evaluation.evaluated_week import WHOLE, EvaluatedWeek
from setwright.solver.evaluation.week import Week
from setwright.solver.uses.blocks.set_steps import set_steps, weekly_sets

SLACK = 1e-9


def climb(base: EvaluatedWeek, weeks: int, now: Mapping[str, float], numbers: BlockDefaults) -> tuple[Week, ...]:
    """So many build weeks that rise evenly to the base week, by at most `rise_most` weekly sets of a muscle each.

    The last is the base week, unless the sets done at present (`now`: muscle -> weekly sets) are so few that as many
    weeks do not reach it.
    """
    caps = {muscle: done + numbers.first_above_now for muscle, done in now.items()}
    steps = set_steps(base, floors(base, now, numbers), caps)
    sets = [weekly_sets(base.resolved, step) for step in steps]

    def allowed(first: int) -> bool:
        return all(sets[first][muscle] <= cap + SLACK for muscle, cap in caps.items())

    lowest = len(steps) - 1
    starts = [step for step in range(lowest + 1) if allowed(step)] or [lowest]
    paths = (_path(sets, step, weeks, numbers.rise_most) for step in reversed(starts))
    # The lowest start from which the base week is reached; else the highest that is allowed, which comes nearest.
    found = next((path for path in paths if path[-1] == 0), None)
    return tuple(steps[step] for step in found or _path(sets, starts[0], weeks, numbers.rise_most))


def floors(base: EvaluatedWeek, now: Mapping[str, float], numbers: BlockDefaults) -> dict[str, float]:
    """The fewest weekly sets of each muscle in a build week: a share of the base week's, and no less than its band."""
    found: dict[str, float] = {}
    for muscle in base.resolved.muscles.values():
        top = base.weekly_sets(muscle.id) / WHOLE
        least = max(numbers.first_share * top, min(muscle.low, top))
        if muscle.id in now:
            least = min(least, now[muscle.id] + numbers.first_above_now)
        found[muscle.id] = least
    return found


def _path(sets: Sequence[Mapping[str, float]], first: int, weeks: int, rise: float) -> tuple[int, ...]:
    """The step of each week from the first on: even, but none higher than the rise allows."""

    @cache
    def rises(lower: int, higher: int) -> bool:
        return any(sets[higher][muscle] - sets[lower][muscle] > rise + SLACK for muscle in sets[lower])

    path = [first]
    for week in range(1, weeks):
        due = floor(first * (weeks - 1 - week) / (weeks - 1) + 0.5)
        path.append(next(step for step in range(min(due, path[-1]), path[-1] + 1) if not rises(path[-1], step)))
    return tuple(path)
