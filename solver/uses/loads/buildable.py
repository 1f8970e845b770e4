"""Loads that can be built: a bar with plates alike on its ends, steps of dumbbells and stacks, or one plate held."""

from __future__ import annotations

from dataclasses import dataclass, field
from functools import cached_property
from typing import Literal


@dataclass(frozen=True)
class Built:
    """A load, and for a bar the plates of one end, the heaviest first."""

    load: float
    plates: tuple[float, ...] = ()
    ends: Literal[1, 2] = field(default=2, compare=False)
    """On how many ends the plates hang."""


@dataclass(frozen=True)
class Bar:
    """A bar of some weight with the pairs of plates that are there: one number for each pair.

    With one end, for a belt or a bar in a corner, both plates of a pair may hang there.
    """

    weight: float
    pairs: tuple[float, ...]
    ends: Literal[1, 2] = 2

    def at_most(self, load: float) -> Built | None:
        """The heaviest load up to `load`, in the fewest plates; None where the bar alone is heavier."""
        return max((built for built in self._all if built.load <= load + SLACK), key=_load, default=None)

    def above(self, load: float) -> Built | None:
        """The lightest load over `load`, in the fewest plates; None where all plates are on."""
        return min((built for built in self._all if built.load > load + SLACK), key=_load, default=None)

    @cached_property
    def _all(self) -> tuple[Built, ...]:
        """Every load of the bar once, each in the fewest plates, of those the one with the heaviest first."""
        ways: dict[float, tuple[float, ...]] = {0.0: ()}
        for plate in sorted(self.pairs * (3 - self.ends), reverse=True):
            for plates in tuple(ways.values()):
                more = (*plates, plate)
                end = round(sum(more), 3)
                if end not in ways or _tidier(more, ways[end]):
                    ways[end] = more
        ends = self.ends
        return tuple(Built(round(self.weight + ends * sum(plates), 3), plates, ends) for plates in ways.values())


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

    def above(self, load: float) -> Built | None:
        """The lightest step over `load`; None where that is more than the most."""
        count = 0 if load < self.least - SLACK else int((load - self.least + SLACK) / self.step) + 1
        found = round(self.least + count * self.step, 3)
        return None if self.most is not None and found > self.most + SLACK else Built(found)


@dataclass(frozen=True)
class OnePlate:
    """Plates that are held one at a time: each load is one of them."""

    plates: tuple[float, ...]

    def at_most(self, load: float) -> Built | None:
        """The heaviest plate up to `load`; None where the lightest is heavier."""
        return max((Built(plate) for plate in self.plates if plate <= load + SLACK), key=_load, default=None)

    def above(self, load: float) -> Built | None:
        """The lightest plate over `load`; None where there is none."""
        return min((Built(plate) for plate in self.plates if plate > load + SLACK), key=_load, default=None)


Kit = Bar | Steps | OnePlate
"""What there is to load one lift with."""
SLACK = 1e-6
"""What a sum of plates may be off by in floating point."""


def _load(built: Built) -> float:
    return built.load


def _tidier(one: tuple[float, ...], other: tuple[float, ...]) -> bool:
    """Whether the plates of one way are fewer, or as many with the heavier first."""
    return (-len(one), one) > (-len(other), other)
