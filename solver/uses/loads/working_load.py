"""The load to begin a lift with: from a recent set, for the repetitions asked for, down to what can be built."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

from setwright.catalogue.entries import Catalogue, Exercise
from setwright.solver.uses.loads.buildable import Built, Kit
from setwright.solver.uses.loads.maximum import Estimate, Formulas, load_for, maximum_of


@dataclass(frozen=True)
class DoneSet:
    """A set as done: load, repetitions, and how many were left."""

    load: float
    reps: int
    rir: int


@dataclass(frozen=True)
class WorkingLoad:
    """What a set says of a lift, and what to load for the repetitions asked for."""

    exercise: Exercise
    done: DoneSet
    reps: tuple[int, int]
    rir: int
    maximum: Estimate
    wanted: Estimate
    """The load for the lower end of the range, by each formula."""
    begin: Built | None
    """The heaviest load that can be built and is no more than either formula says; None where the least is heavier."""
    ramp: tuple[tuple[Built, int], ...]
    """Ramp-up sets before it: a load that can be built, and repetitions."""
    unsure: bool
    """Whether so many repetitions were done, or are asked for, that the formulas spread."""


def working_load(
    exercise: Exercise, done: DoneSet, reps: tuple[int, int], rir: int, kit: Kit, catalogue: Catalogue
) -> WorkingLoad:
    """The load of a lift for `reps` with `rir` left; every weight in the unit of the set."""
    formulas = Formulas.of(catalogue)
    maximum = maximum_of(done.load, done.reps, done.rir, formulas)
    wanted = load_for(maximum, reps[0], rir, formulas)
    begin = kit.at_most(wanted.lower)
    usual = catalogue.defaults.ramp if exercise.multi_joint else ()
    sure = catalogue.number("formulas-sure-reps")
    return WorkingLoad(
        exercise=exercise,
        done=done,
        reps=reps,
        rir=rir,
        maximum=maximum,
        wanted=wanted,
        begin=begin,
        ramp=() if begin is None else ramp_loads(begin.load, kit, usual),
        unsure=max(done.reps + done.rir, reps[0] + rir) > sure,
    )


def ramp_loads(load: float, kit: Kit, steps: Iterable[tuple[int, int]]) -> tuple[tuple[Built, int], ...]:
    """Ramp-up sets before a working load: each a load that can be built, lighter than it, and repetitions.

    `steps` are (hundredths of the working load, repetitions); those that fall together are one set.
    """
    found: dict[float, tuple[Built, int]] = {}
    for share, reps in steps:
        built = kit.at_most(load * share / 100)
        if built is not None and built.load < load:
            found[built.load] = (built, reps)
    return tuple(found.values())
