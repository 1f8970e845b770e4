"""The estimated maximum of a lift from one session to the next, each with an interval."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date

from setwright.catalogue.entries import Catalogue, Exercise
from setwright.solver.evaluation.week import Entry
from setwright.solver.log.values import LoggedSession, LoggedSet, exposures
from setwright.solver.uses.loads.maximum import Formulas, maximum_of
from setwright.solver.uses.progress.matching import straight_sets


@dataclass(frozen=True)
class MaximumEstimate:
    """What the best set of a session says of the maximum, in the unit of the log.

    The interval holds both formulas, one repetition fewer left than was said (convention), and as many more as the
    upper end of Halperin et al. 2022; of a set that says nothing, none left to as many as were asked and those.
    """

    on: date
    load: float
    reps: int
    rir: int | None
    value: float
    """The mean of both formulas, for the repetitions left as they were said; none where nothing was said."""
    low: float
    high: float
    one_rep: float
    """What one repetition more at the same load would add to `value`."""
    unsure: bool
    """Whether so many repetitions were possible that the formulas spread."""


def has_maximum(exercise: Exercise) -> bool:
    """Whether a maximum can be estimated: the load is known and all that is lifted, and sets are repetitions."""
    return exercise.has_load and exercise.body_weight is None and not exercise.timed


def maximum_course(
    sessions: Sequence[LoggedSession], entry: Entry, catalogue: Catalogue
) -> tuple[MaximumEstimate, ...]:
    """An estimate for each session with a line's lift, oldest first: of its straight sets the one that says most.

    Empty for a lift without a maximum. All sessions must have loads of one unit.
    """
    if not has_maximum(catalogue.exercises[entry.exercise]):
        return ()
    found: list[MaximumEstimate] = []
    for session, sets in exposures(sessions, entry.exercise):
        straight = straight_sets(sets, entry)
        estimates = [_estimate(session.on, done, entry.rir, catalogue) for done in straight if done.load]
        if estimates:
            found.append(max(estimates, key=lambda one: (one.value, one.low)))
    return tuple(found)


def _estimate(on: date, done: LoggedSet, asked_rir: int, catalogue: Catalogue) -> MaximumEstimate:
    formulas, load, reps = Formulas.of(catalogue), float(done.load or 0), max(1, done.reps)
    fewer = catalogue.number("maximum-rir-over")
    more = catalogue.evidence["halperin-2022-underprediction"].high or 0.0
    said = done.rir or 0
    able = (reps + max(0.0, said - fewer), reps + (asked_rir if done.rir is None else said) + more)
    value = _middle(load, reps + said, formulas)
    return MaximumEstimate(
        on=on,
        load=load,
        reps=reps,
        rir=done.rir,
        value=value,
        low=min(_both(load, able[0], formulas)),
        high=max(_both(load, able[1], formulas)),
        one_rep=_middle(load, reps + said + 1, formulas) - value,
        unsure=reps + said > catalogue.number("formulas-sure-reps"),
    )


def _both(load: float, able: float, formulas: Formulas) -> tuple[float, ...]:
    """The maximum by each formula that has a value there."""
    other = formulas.brzycki(able)
    return (load * formulas.epley(able),) if other is None else (load * formulas.epley(able), load * other)


def _middle(load: float, able: int, formulas: Formulas) -> float:
    found = maximum_of(load, able, 0, formulas)
    return found.epley if found.brzycki is None else (found.epley + found.brzycki) / 2
