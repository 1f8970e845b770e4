"""The loads of a lift from easy to hard: heavier is harder, except where the load helps the body up."""

from __future__ import annotations

from dataclasses import dataclass

from setwright.catalogue.entries import Exercise
from setwright.solver.uses.loads.buildable import Built, Kit
from setwright.solver.uses.loads.next_step import lighter, next_load, step_share
from setwright.solver.uses.progress.numbers import ProgressNumbers


@dataclass(frozen=True)
class Ladder:
    """The loads that can be built for one lift."""

    exercise: Exercise
    kit: Kit
    numbers: ProgressNumbers

    def same(self, load: float) -> Built | None:
        """The load itself, or where it cannot be built the next easier one; None where there is none."""
        if self._helped:
            return self._just(load) or next_load(self.kit, load)
        return self.kit.at_most(load)

    def harder(self, load: float) -> Built | None:
        """The first load 2 % up or more, where it is no more than 10 % up (ACSM 2009); else the next harder one."""
        if self._helped:
            return self.kit.at_most(load - SMALLEST)
        first = next_load(self.kit, load)
        found = first
        while found is not None and step_share(load, found) < self.numbers.step_least:
            found = next_load(self.kit, found.load)
        return first if found is None or self.too_big(load, found) else found

    def easier(self, load: float, share: float) -> Built | None:
        """The hardest load at least `share` easier (0 to 1), else the easiest if it is a usual step back.

        Of a load that helps, the next that helps more.
        """
        if self._helped:
            return next_load(self.kit, load)
        easiest = next_load(self.kit, -1.0)
        usual = lighter(self.kit, load, 1 - self.numbers.back)
        return lighter(self.kit, load, 1 - share) or (None if usual is None else easiest)

    def too_big(self, load: float, harder: Built) -> bool:
        """Whether a step is more than the published 10 %; where the body is lifted too, its share cannot be told."""
        return self.share_known(load) and step_share(load, harder) > self.numbers.step_most + SMALLEST

    def share_known(self, load: float) -> bool:
        """Whether the load is all that is lifted, as far as can be told: no body weight, no empty sled."""
        return self.exercise.body_weight is None and load > 0

    @property
    def _helped(self) -> bool:
        return self.exercise.body_weight == "helped"

    def _just(self, load: float) -> Built | None:
        built = self.kit.at_most(load)
        return built if built is not None and abs(built.load - load) < SMALLEST else None


SMALLEST = 1e-4
"""What two loads in kg or lb, or two shares, may differ by and still be the same."""
