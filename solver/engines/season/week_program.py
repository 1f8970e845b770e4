"""The week of one block of a season as a small linear model, for both engines: sets by activity, emphases, worth."""

from __future__ import annotations

from collections.abc import Collection
from itertools import pairwise

from setwright.solver.engines.season.problem import HELD, SPECIALISED, Room, SeasonMuscle, SeasonProblem

HALF = 50
"""Hundredths of a set in a half set."""
MOST_HALVES = 200
"""Half sets a week that no muscle reaches."""
Row = tuple[dict[int, int], int | None, int | None]
"""Coefficients by variable, and the limits of their sum."""


class WeekProgram:
    """Whole-number variables with limits and gains, and the constraints between them, all coefficients whole."""

    def __init__(self, problem: SeasonProblem, room: Room) -> None:
        self.problem = problem
        self.low: list[int] = []
        self.high: list[int] = []
        self.gain: list[int] = []
        self.rows: list[Row] = []
        self.activities = [self._variable(a.most if a.setup == room.setup else 0) for a in problem.activities]
        self._room(room)
        self.half_sets: list[int] = []
        self.emphases: list[dict[str, int]] = []
        """For each muscle, emphasis -> the variable that says whether it has it."""
        for m in range(len(problem.muscles)):
            self._muscle(m)

    def limits(self, specialised: Collection[int], not_held: Collection[int]) -> dict[int, tuple[int, int]]:
        """The limits of emphasis variables under which just these muscles are specialised and those are not held."""
        found = {}
        for m, emphases in enumerate(self.emphases):
            for emphasis, variable in emphases.items():
                if emphasis == SPECIALISED and len(emphases) > 1:
                    found[variable] = (1, 1) if m in specialised else (0, 0)
                elif emphasis == HELD and m in not_held and len(emphases) > 1:
                    found[variable] = (0, 0)
        return found

    def _variable(self, high: int, gain: int = 0) -> int:
        self.low.append(0)
        self.high.append(high)
        self.gain.append(gain)
        return len(self.gain) - 1

    def _room(self, room: Room) -> None:
        """The seconds and sets of the week; sets of an activity fewer than usual cost."""
        here = [(a, x) for a, x in zip(self.problem.activities, self.activities, strict=True) if a.setup == room.setup]
        self.rows.append(({x: a.seconds for a, x in here}, None, room.seconds))
        self.rows.append(({x: 1 for _, x in here}, None, room.sets))
        for activity, sets in here:
            if activity.usual:
                fewer = self._variable(activity.usual, -self.problem.usual_cost)
                self.rows.append(({fewer: 1, sets: 1}, activity.usual, None))

    def _muscle(self, m: int) -> None:
        """A muscle's emphasis, its half sets, those that count, and what is below and above its band."""
        muscle = self.problem.muscles[m]
        emphases = {emphasis: self._variable(1) for emphasis in muscle.emphases}
        self.emphases.append(emphases)
        self.rows.append((dict.fromkeys(emphases.values(), 1), 1, 1))
        total = {
            x: part
            for a, x in zip(self.problem.activities, self.activities, strict=True)
            if (part := dict(a.parts).get(m, 0))
        }
        half_sets, counted = self._variable(MOST_HALVES), self._variable(MOST_HALVES)
        short = self._variable(MOST_HALVES, -muscle.short_cost)
        over = self._variable(MOST_HALVES, -self.problem.excess_cost)
        self.half_sets.append(half_sets)
        highs = {emphases[e]: terms.high for e, terms in muscle.emphases.items()}
        lows = {emphases[e]: terms.low for e, terms in muscle.emphases.items()}
        # Half sets are the sets rounded down to the grid.
        self.rows.append(({**total, half_sets: -HALF}, 0, HALF - 1))
        self.rows.append(({counted: 1, half_sets: -1}, None, 0))
        self.rows.append(({counted: 1, **{x: -v for x, v in highs.items()}}, None, 0))
        self.rows.append(({short: 1, counted: 1, **{x: -v for x, v in lows.items()}}, 0, None))
        self.rows.append(({over: 1, half_sets: -1, **highs}, 0, None))
        self._worth(muscle, emphases, counted)

    def _worth(self, muscle: SeasonMuscle, emphases: dict[str, int], counted: int) -> None:
        """Weight times index: an index for each emphasis, nothing under the others, all under the curve's lines."""
        parts = []
        for emphasis, terms in muscle.emphases.items():
            top = index_at(muscle.curve, terms.high)
            part = self._variable(top, terms.weight)
            self.rows.append(({part: 1, emphases[emphasis]: -top}, None, 0))
            parts.append(part)
        for (a, low), (b, high) in pairwise(muscle.curve):
            wide = b - a
            line = {**dict.fromkeys(parts, wide), counted: low - high}
            self.rows.append((line, None, wide * low - (high - low) * a))


def index_at(curve: tuple[tuple[int, int], ...], half_sets: int) -> int:
    """The index of so many half sets in whole hundredths, rounded down between two points of the curve."""
    return min(low + (high - low) * (half_sets - a) // (b - a) for (a, low), (b, high) in pairwise(curve))


def worth_of(problem: SeasonProblem, emphases: tuple[str, ...], half_sets: tuple[int, ...]) -> int:
    """What half sets of each muscle are worth a week under these emphases, less what is outside their bands."""
    found = 0
    for muscle, emphasis, sets in zip(problem.muscles, emphases, half_sets, strict=True):
        terms = muscle.emphases[emphasis]
        found += terms.weight * index_at(muscle.curve, min(sets, terms.high))
        found -= muscle.short_cost * max(0, terms.low - sets)
        found -= problem.excess_cost * max(0, sets - terms.high)
    return found
