"""What each line of a block's weeks is planned at: repetitions first inside their range, then the next load."""

from __future__ import annotations

from dataclasses import dataclass, replace
from typing import Literal

from setwright.catalogue.entries import Catalogue, Exercise
from setwright.solver.uses.loads.buildable import Kit
from setwright.solver.uses.loads.maximum import Formulas, load_for, maximum_of
from setwright.solver.uses.loads.next_step import lighter, next_load, repetitions_first

Step = Literal["find", "begin", "same", "more", "next", "lighter", "top"]
"""find: no load is known, start light; begin: from the set that is known; same: as before; more: more repetitions;
next: the next load, or a harder form; lighter: a share of the load; top: nothing heavier, the most repetitions."""


@dataclass(frozen=True)
class Loading:
    """How a lift is loaded: what can be built (None: body weight or a band), and the load to begin with if known."""

    kit: Kit | None
    begin: float | None = None


@dataclass(frozen=True)
class Target:
    """What every set of a line is planned at: repetitions (breaths of a hold), the load in the client's unit."""

    reps: int
    load: float | None
    """None where it is not known beforehand, or there is none to choose."""
    step: Step


class Progression:
    """The planned targets of one lift from week to week; each call is the next week's, in order."""

    def __init__(self, exercise: Exercise, reps: tuple[int, int], loading: Loading, catalogue: Catalogue) -> None:
        """`reps` is the range that is printed."""
        self._exercise, self._range, self._loading, self._catalogue = exercise, reps, loading, catalogue
        low, high = reps
        self._more = max(1, round(catalogue.defaults.block.reps_step * (high - low)))
        self._formulas = Formulas.of(catalogue)
        self.last: Target | None = None
        self._found = False

    def build(self, rir: int) -> Target:
        """The target of a build week with so many repetitions in reserve."""
        self.last = self._first() if self.last is None else self._following(self.last, rir)
        return self.last

    def held(self) -> Target:
        """The target of a week that keeps load and repetitions; the progression stands still."""
        found = self._first() if self.last is None else replace(self.last, step="same")
        self._found = True
        return found

    def lighter(self) -> Target:
        """The target of a lighter week: a share of the load, without one fewer repetitions; the progression waits."""
        numbers, target, kit = self._catalogue.defaults.block, self.held(), self._loading.kit
        if kit is None:
            return replace(target, reps=max(1, target.reps - numbers.lighter_rir))
        if target.load is None:
            return target if target.step == "find" else replace(target, step="lighter")
        built = lighter(kit, target.load, numbers.lighter_load)
        return replace(target, load=target.load if built is None else built.load, step="lighter")

    def _first(self) -> Target:
        low, _ = self._range
        known = self._loading.kit is None or self._loading.begin is not None or self._found
        return Target(low, self._loading.begin, "begin" if known else "find")

    def _following(self, last: Target, rir: int) -> Target:
        low, high = self._range
        if last.reps < high:
            return replace(last, reps=min(high, last.reps + self._more), step="more")
        if self._exercise.timed or self._loading.kit is None:
            return replace(last, step="top")
        if last.load is None:
            return replace(last, reps=low, step="next")
        built = next_load(self._loading.kit, last.load)
        if built is None:
            return replace(last, step="top")
        if repetitions_first(last.load, built, self._catalogue) and not self._carries(last, built.load, rir):
            return replace(last, reps=last.reps + self._more, step="more")
        return Target(low, built.load, "next")

    def _carries(self, last: Target, load: float, rir: int) -> bool:
        """Whether the repetitions done with the last load speak for the lower end of the range with the next."""
        assert last.load is not None
        maximum = maximum_of(last.load, last.reps, rir, self._formulas)
        return load_for(maximum, self._range[0], rir, self._formulas).lower >= load
