"""One session's work on one lift, as progression looks at it: the working load, and the sets done with it."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from datetime import date, datetime

from setwright.catalogue.entries import Exercise
from setwright.solver.evaluation.week import Entry, Week
from setwright.solver.log.values import LoggedSession, LoggedSet, exposures
from setwright.solver.uses.progress.matching import day_of, straight_sets


@dataclass(frozen=True)
class Exposure:
    """The sets of a lift in one session that were done with its working load or a harder one, in order.

    The working load is that of most sets, of loads used as often the harder; a set that says none has that of the set
    before. Where each side is logged, a set is the side with fewer repetitions.
    """

    on: date
    load: float | None
    """The working load in the client's unit; None where the log says none."""
    reps: tuple[int, ...]
    rirs: tuple[int | None, ...]
    easier_sets: int = 0
    """Sets done with an easier load than the working load."""

    @property
    def rir_said(self) -> bool:
        """Whether every set says how many repetitions were left."""
        return None not in self.rirs

    def at_rir(self, asked: int) -> tuple[int, ...]:
        """The repetitions of each set had it ended with `asked` left; as done where the set does not say."""
        pairs = zip(self.reps, self.rirs, strict=True)
        return tuple(reps if rir is None else max(0, reps + rir - asked) for reps, rir in pairs)


def exposures_of_line(
    sessions: Sequence[LoggedSession], entry: Entry, exercise: Exercise, day: int, week: Week
) -> tuple[Exposure, ...]:
    """The exposures that a line of the week stands on, oldest first; of several sets one with a technique is left out.

    Where the lift is planned with other repetitions or effort on another day, sessions of such days are left out.
    """
    alike = _days_planned_alike(exercise.id, day, week)
    return tuple(
        _exposure(session, straight_sets(sets, entry) or sets, exercise)
        for session, sets in exposures(sessions, exercise.id)
        if alike is None or day_of(session, week) in alike
    )


def _days_planned_alike(exercise: str, day: int, week: Week) -> set[int] | None:
    """The days that ask the same of a lift as this one; None where all days with it do."""
    asked = {
        place: (entry.reps, entry.rir)
        for place, entries in enumerate(week.days)
        for entry in entries
        if entry.exercise == exercise
    }
    alike = {place for place, said in asked.items() if said == asked.get(day)}
    return None if len(alike) == len(asked) else alike


def _exposure(session: LoggedSession, sets: Sequence[LoggedSet], exercise: Exercise) -> Exposure:
    sets = _weaker_sides(list(_with_loads(sets)))
    load = _working_load(sets, exercise)
    sign = -1 if exercise.body_weight == "helped" else 1
    kept = [done for done in sets if load is None or (done.load is not None and sign * (done.load - load) >= 0)]
    return Exposure(
        on=session.on,
        load=load,
        reps=tuple(done.reps for done in kept),
        rirs=tuple(done.rir for done in kept),
        easier_sets=len(sets) - len(kept),
    )


def _with_loads(sets: Sequence[LoggedSet]) -> Iterator[LoggedSet]:
    """The sets, each that says no load with that of the set before, or the first that is said."""
    load = next((done.load for done in sets if done.load is not None), None)
    for done in sets:
        load = load if done.load is None else done.load
        yield replace(done, load=load)


def _working_load(sets: Sequence[LoggedSet], exercise: Exercise) -> float | None:
    """The load of most sets, of loads used as often the harder; None where no set says one."""
    counts = Counter(done.load for done in sets if done.load is not None)
    sign = -1 if exercise.body_weight == "helped" else 1
    return max(counts, key=lambda load: (counts[load], sign * load), default=None)


def _weaker_sides(sets: Sequence[LoggedSet]) -> list[LoggedSet]:
    """Each left set with the right set of the same place as one: the one with fewer repetitions, then fewer left."""
    left = [done for done in sets if done.side == "left"]
    right = [done for done in sets if done.side == "right"]
    both = [done for done in sets if done.side is None]
    paired = [min(pair, key=_reps_then_rir) for pair in zip(left, right, strict=False)]
    alone = [*left[len(right) :], *right[len(left) :]]
    found = [*both, *paired, *alone]
    return sorted(found, key=lambda done: (done.ended or datetime.min, sets.index(done))) if both else found


def _reps_then_rir(done: LoggedSet) -> tuple[int, int]:
    return done.reps, 0 if done.rir is None else done.rir
