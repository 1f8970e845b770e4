"""The load to begin a lift with: from a recent set, for the repetitions asked for, down to what can be built."""

from __future__ import annotations

from dataclasses import dataclass

from setwright.catalogue.entries import Catalogue, Exercise
from setwright.solver.uses.loads.buildable import Bar, Built, Steps
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
    exercise: Exercise, done: DoneSet, reps: tuple[int, int], rir: int, kit: Bar | Steps, catalogue: Catalogue
) -> WorkingLoad:
    """The load of a lift for `reps` with `rir` left; every weight in the unit of the set."""
    formulas = Formulas.of(catalogue)
    maximum = maximum_of(done.load, done.reps, done.rir, formulas)
    wanted = load_for(maximum, reps[0], rir, formulas)
    begin = kit.at_most(wanted.lower)
    sure = catalogue.evidence["formulas-sure-reps"].value
    return WorkingLoad(
        exercise=exercise,
        done=done,
        reps=reps,
        rir=rir,
        maximum=maximum,
        wanted=wanted,
        begin=begin,
        ramp=_ramp(begin, kit, exercise, catalogue),
        unsure=max(done.reps + done.rir, reps[0] + rir) > sure,
    )


def _ramp(
    begin: Built | None, kit: Bar | Steps, exercise: Exercise, catalogue: Catalogue
) -> tuple[tuple[Built, int], ...]:
    """The usual ramp-up sets of a cold multi-joint lift, each on what can be built; those that fall together once."""
    if begin is None or not exercise.multi_joint:
        return ()
    found: dict[float, tuple[Built, int]] = {}
    for share, reps in catalogue.defaults.ramp:
        built = kit.at_most(begin.load * share / 100)
        if built is not None and built.load < begin.load:
            found[built.load] = (built, reps)
    return tuple(found.values())
