"""Loads that can be built: a bar with plates alike on both ends, or the steps of dumbbells, stacks and kettlebells."""

from __future__ import annotations

from dataclasses import dataclass
from itertools import combinations


@dataclass(frozen=True)
class Built:
    """A load, and for a bar the plates of one end, the heaviest first."""

    load: float
    plates: tuple[float, ...] = ()


@dataclass(frozen=True)
class Bar:
    """A bar of some weight with the pairs of plates that are there: one number for each pair."""

    weight: float
    pairs: tuple[float, ...]

    def at_most(self, load: float) -> Built | None:
        """The heaviest load up to `load`, in the fewest plates; None where the bar alone is heavier."""
        best: Built | None = None
        for built in self._all():
            if built.load <= load + SLACK and (best is None or _order(built) > _order(best)):
                best = built
        return best

    def _all(self) -> list[Built]:
        """Every load of the bar, each way of building it."""
        pairs = tuple(sorted(self.pairs, reverse=True))
        chosen = {plates for count in range(len(pairs) + 1) for plates in combinations(pairs, count)}
        return [Built(round(self.weight + 2 * sum(plates), 3), plates) for plates in chosen]


@dataclass(frozen=True)
class Steps:
    """Loads from the least by equal steps to the most: dumbbells, a stack of plates, kettlebells."""

    least: float
    step: float
    most: float | None = None

    def at_most(self, load: float) -> Built | None:
        """The heaviest step up to `load`; None where the least is heavier."""
        top = load if self.most is None else min(load, self.most)
        if top < self.least - SLACK:
            return None
        count = int((top - self.least + SLACK) / self.step)
        return Built(round(self.least + count * self.step, 3))


SLACK = 1e-6
"""What a sum of plates may be off by in floating point."""


def _order(built: Built) -> tuple[float, int]:
    """The heavier first, then the fewer plates."""
    return built.load, -len(built.plates)
