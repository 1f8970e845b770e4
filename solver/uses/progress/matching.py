"""Which session of the planned week a logged session was, and whether its loads can be read beside the client's."""

from __future__ import annotations

from collections.abc import Sequence

from setwright.catalogue.entries import Catalogue
from setwright.catalogue.faults import Fault, UsageFault, shown
from setwright.catalogue.near import did_you_mean
from setwright.solver.brief.schema import Unit
from setwright.solver.evaluation.week import Entry, Week
from setwright.solver.log.values import LoggedSession, LoggedSet


def day_of(session: LoggedSession, week: Week) -> int | None:
    """The index of the planned day a session was: as the log says, else the day that shares most of its sets.

    Of days that share as many the first; None where no day of the week has any of its exercises.
    """
    if session.session is not None and session.session <= len(week.days):
        return session.session - 1
    shared = [_shared(session, {entry.exercise for entry in day}) for day in week.days]
    most = max(shared, default=0)
    return shared.index(most) if most else None


def _shared(session: LoggedSession, exercises: set[str]) -> int:
    return sum(1 for done in session.sets if done.exercise in exercises)


def straight_sets(sets: Sequence[LoggedSet], entry: Entry) -> tuple[LoggedSet, ...]:
    """The sets whose repetitions can be held against the range: not a last set with drops or pauses."""
    if entry.technique == "straight":
        return tuple(sets)
    return tuple(done for done in sets if done.number < entry.sets)


def refuse_unknown_exercises(sessions: Sequence[LoggedSession], catalogue: Catalogue) -> None:
    """Raise UsageFault with every exercise of a log that the catalogue does not have."""
    unknown = {done.exercise: session.on for session in sessions for done in session.sets}
    faults = [
        Fault(f"log of {on.isoformat()}", f"{shown(name)} is no exercise", did_you_mean(name, catalogue.exercises))
        for name, on in sorted(unknown.items())
        if name not in catalogue.exercises
    ]
    if faults:
        raise UsageFault(faults)


def refuse_other_units(sessions: Sequence[LoggedSession], unit: Unit) -> None:
    """Raise UsageFault with every session that has loads in another unit: loads of two units are never mixed."""
    faults = [
        Fault(
            f"log of {session.on.isoformat()}",
            f"its loads are in {session.unit}, expected {unit} as the client's other weights",
            f"write that session's loads in {unit}, or set the client's unit to {session.unit}",
        )
        for session in sessions
        if session.unit != unit and any(done.load is not None for done in session.sets)
    ]
    if faults:
        raise UsageFault(faults)
