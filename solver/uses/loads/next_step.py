"""The next load up and a lighter one: what can be built above a load, how large that step is, and a share of a load."""

from __future__ import annotations

from setwright.catalogue.entries import Catalogue
from setwright.solver.uses.loads.buildable import Built, Kit


def next_load(kit: Kit, load: float) -> Built | None:
    """The lightest load over `load` that can be built, in the unit of the kit; None where there is no heavier one."""
    return kit.above(load)


def step_share(load: float, built: Built) -> float:
    """How much heavier `built` is than `load`, as a share of `load`: 0.05 from 50 to 52.5; infinite from nothing."""
    return (built.load - load) / load if load > 0 else float("inf")


def repetitions_first(load: float, built: Built, catalogue: Catalogue) -> bool:
    """Whether the step from `load` to `built` is so large that repetitions are added first.

    ACSM 2009 adds 2 to 10 % at a time; a step over 10 % is what coaches reach by repetitions (common practice).
    """
    return 100 * step_share(load, built) > catalogue.number("acsm-2009-load-step-most") + SLACK


def lighter(kit: Kit, load: float, share: float) -> Built | None:
    """The heaviest load that can be built up to `load` x `share` (0 to 1); None where the least is heavier."""
    return kit.at_most(load * share)


SLACK = 1e-6
"""What a share of a load may be off by in floating point, in per cent."""
