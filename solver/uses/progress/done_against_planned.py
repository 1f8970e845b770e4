"""What was done beside what was planned: sets, repetitions, load and minutes of a session, weekly sets of a muscle."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from datetime import date

from setwright.catalogue.entries import Catalogue
from setwright.solver.evaluation.evaluated_week import EvaluatedWeek
from setwright.solver.evaluation.week import Entry
from setwright.solver.log.mondays import monday_of
from setwright.solver.log.values import LoggedSession, LoggedSet
from setwright.solver.uses.progress.matching import day_of, refuse_unknown_exercises


@dataclass(frozen=True)
class LineDone:
    """One exercise of a session; a side that is logged by itself is half a set."""

    exercise: str
    sets: float
    reps: int
    load: float | None
    """Load times repetitions of all sets, in the unit of the log; None where a set says no load."""
    planned_sets: int
    """0 where it was not planned."""
    planned_reps: tuple[int, int]
    """The repetitions of all planned sets together, least and most."""


@dataclass(frozen=True)
class SessionDone:
    """A logged session beside the planned day it was; `day` is None where it is none of the week's."""

    on: date
    day: int | None
    lines: tuple[LineDone, ...]
    minutes: float | None
    planned_minutes: float | None

    @property
    def sets(self) -> float:
        """The sets done."""
        return sum(line.sets for line in self.lines)

    @property
    def planned_sets(self) -> int:
        """The sets planned."""
        return sum(line.planned_sets for line in self.lines)


@dataclass(frozen=True)
class MuscleDone:
    """A muscle's fractional sets in a calendar week from Monday, done and planned; techniques are not credited."""

    week: date
    muscle: str
    sets: float
    planned_sets: float


def minutes_taken(session: LoggedSession) -> float | None:
    """How long a session took: from its times, else as written down; None where neither is there."""
    if session.started is not None and session.ended is not None:
        return (session.ended - session.started).total_seconds() / 60
    return session.minutes


def sessions_done(evaluated: EvaluatedWeek, sessions: Sequence[LoggedSession]) -> tuple[SessionDone, ...]:
    """Each logged session beside its planned day, in the order of the dates."""
    found = []
    for session in sorted(sessions, key=lambda one: one.on):
        day = day_of(session, evaluated.week)
        entries = () if day is None else evaluated.week.days[day]
        found.append(
            SessionDone(
                on=session.on,
                day=day,
                lines=tuple(_lines(session, entries)),
                minutes=minutes_taken(session),
                planned_minutes=None if day is None else evaluated.seconds(day) / 60,
            )
        )
    return tuple(found)


def muscles_done(evaluated: EvaluatedWeek, sessions: Sequence[LoggedSession]) -> tuple[MuscleDone, ...]:
    """Every muscle's sets in each calendar week that has a session, in the catalogue's order.

    Raises UsageFault for exercises that the catalogue does not have.
    """
    catalogue = evaluated.resolved.catalogue
    refuse_unknown_exercises(sessions, catalogue)
    planned = _muscle_sets(((entry.exercise, float(entry.sets)) for entry in evaluated.week.entries), catalogue)
    weeks: dict[date, list[LoggedSession]] = {}
    for session in sessions:
        weeks.setdefault(monday_of(session.on), []).append(session)
    found = []
    for monday, logged in sorted(weeks.items()):
        done = _muscle_sets(((one.exercise, _part(one)) for session in logged for one in session.sets), catalogue)
        for muscle in catalogue.muscles:
            if muscle in done or muscle in planned:
                found.append(MuscleDone(monday, muscle, done.get(muscle, 0.0), planned.get(muscle, 0.0)))
    return tuple(found)


def _muscle_sets(sets: Iterable[tuple[str, float]], catalogue: Catalogue) -> dict[str, float]:
    found: dict[str, float] = {}
    for exercise, count in sets:
        for muscle, part in catalogue.exercises[exercise].contributions:
            found[muscle] = found.get(muscle, 0.0) + count * part / 100
    return found


def _lines(session: LoggedSession, entries: Sequence[Entry]) -> Iterable[LineDone]:
    """The planned lines in their order, then what was done beyond them."""
    planned = {entry.exercise: entry for entry in entries}
    for exercise in dict.fromkeys([*planned, *(done.exercise for done in session.sets)]):
        done = [one for one in session.sets if one.exercise == exercise]
        entry = planned.get(exercise)
        low, high = (0, 0) if entry is None else entry.reps
        sets = 0 if entry is None else entry.sets
        yield LineDone(
            exercise=exercise,
            sets=sum(_part(one) for one in done),
            reps=sum(one.reps for one in done),
            load=_load_moved(done),
            planned_sets=sets,
            planned_reps=(low * sets, high * sets),
        )


def _load_moved(done: Sequence[LoggedSet]) -> float | None:
    loads = [one.load for one in done]
    if None in loads or not done:
        return None
    return sum((one.load or 0.0) * one.reps for one in done)


def _part(done: LoggedSet) -> float:
    return 1.0 if done.side is None else 0.5
