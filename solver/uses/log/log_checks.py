"""What looks wrong in a log, or is unlike the week that was planned, as values; nothing here is an error."""

from __future__ import annotations

from collections import Counter
from collections.abc import Callable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from datetime import date
from statistics import median
from typing import Final, Literal

from setwright.solver.auditing import Audit
from setwright.solver.brief.schema import Unit
from setwright.solver.evaluation.week import Entry, Week
from setwright.solver.log.values import LoggedSession
from setwright.solver.uses.log.planned_day import planned_day, weekdays_of

Kind = Literal["load", "sets", "not planned", "day off", "repetitions", "sides", "missing"]
"""load: far from the usual of the lift; sets: another number than planned; not planned: a lift that is not in the
week; day off: a session on no day of the week; repetitions: far outside the range; sides: one has more sets; missing:
a planned session that was not logged."""
SLIP: Final = 5
"""A load so many times the usual, or so small a part of it, is likely a slip of the pen: a lost decimal mark makes it
ten times, and loads of one lift differ by up to about two (convention)."""
FEWEST_LOADS: Final = 4
"""Sets of a lift from which its usual load is known (convention)."""
FAR_BELOW: Final = 1 / 2
FAR_ABOVE: Final = 3 / 2
"""Repetitions below this share of the range's lower end, or above this share of its upper end, are far (convention)."""


@dataclass(frozen=True)
class LogFinding:
    """One thing that a coach may want to look at: what was done, what is usual or planned, and where."""

    kind: Kind
    on: date
    exercise: str = ""
    number: int | None = None
    """The set's number, where it is about one set; the session's in its week, where it is missing."""
    amount: float | None = None
    """What was done: a load in the session's unit, sets, repetitions, or sets of the left side; of a missing session
    the lifts that were planned."""
    unit: Unit | None = None
    """Of a load."""
    limit: tuple[float, ...] = ()
    """The usual load, the planned sets, the ends of the range, or the sets of the right side."""


PlannedOn = Callable[[date], Audit | Week | None]
"""The week that was planned for a day; None where none was."""


def check_log(sessions: Sequence[LoggedSession], planned_on: PlannedOn = lambda _: None) -> tuple[LogFinding, ...]:
    """What looks wrong in some sessions, in their order, and what is unlike the week that was planned for their day."""
    usual = _usual_loads(sessions)
    found: list[LogFinding] = []
    for session in sorted(sessions, key=lambda s: s.on):
        found += _slips(session, usual)
        found += _sides(session)
        planned = planned_on(session.on)
        if isinstance(planned, Audit):
            found += _unlike(session, planned.evaluated.week, weekdays_of(planned))
        elif planned is not None:
            found += _unlike(session, planned, ())
    return tuple(found)


def _usual_loads(sessions: Sequence[LoggedSession]) -> dict[tuple[str, str], float]:
    """(lift, unit) -> the median of its loads, where it has enough of them."""
    loads: dict[tuple[str, str], list[float]] = {}
    for session in sessions:
        for done in session.sets:
            if done.load:
                loads.setdefault((done.exercise, session.unit), []).append(done.load)
    return {key: median(found) for key, found in loads.items() if len(found) >= FEWEST_LOADS}


def _slips(session: LoggedSession, usual: Mapping[tuple[str, str], float]) -> Iterator[LogFinding]:
    for done in session.sets:
        middle = usual.get((done.exercise, session.unit))
        if middle and done.load and not middle / SLIP < done.load < middle * SLIP:
            yield LogFinding("load", session.on, done.exercise, done.number, done.load, session.unit, (middle,))


def _sides(session: LoggedSession) -> Iterator[LogFinding]:
    """Lifts of which one side has more sets than the other."""
    by_side = Counter((done.exercise, done.side) for done in session.sets if done.side)
    for lift in dict.fromkeys(done.exercise for done in session.sets if done.side):
        left, right = by_side[lift, "left"], by_side[lift, "right"]
        if left != right:
            yield LogFinding("sides", session.on, lift, None, left, limit=(right,))


def _unlike(session: LoggedSession, week: Week, weekdays: Sequence[int]) -> Iterator[LogFinding]:
    """Where a session differs from the planned one it stands for."""
    if weekdays and session.on.weekday() not in weekdays:
        yield LogFinding("day off", session.on)
    day = planned_day(session, week, weekdays)
    lines = {entry.exercise: entry for entry in week.days[day]} if day is not None else {}
    anywhere = {entry.exercise: entry for entry in reversed(week.entries)}
    done = _set_counts(session)
    for lift in dict.fromkeys([*done, *lines]):
        entry = lines.get(lift) or anywhere.get(lift)
        if entry is None:
            yield LogFinding("not planned", session.on, lift, None, done[lift])
        elif done.get(lift, 0) != entry.sets:
            yield LogFinding("sets", session.on, lift, None, done.get(lift, 0), limit=(entry.sets,))
    yield from _far_repetitions(session, {**anywhere, **lines})


def _set_counts(session: LoggedSession) -> dict[str, int]:
    """Lift -> its sets; those of two sides are counted once, as the side with more has them."""
    counts = Counter((done.exercise, done.side) for done in session.sets)
    found: dict[str, int] = {}
    for done in session.sets:
        lift = done.exercise
        found[lift] = counts[lift, None] + max(counts[lift, "left"], counts[lift, "right"])
    return found


def _far_repetitions(session: LoggedSession, lines: Mapping[str, Entry]) -> Iterator[LogFinding]:
    """Sets far outside their range; the last set of a technique may have as many as it takes."""
    for done in session.sets:
        entry = lines.get(done.exercise)
        if entry is None:
            continue
        low, high = entry.reps
        goes_on = entry.technique != "straight" and done.number >= entry.sets
        if done.reps < FAR_BELOW * low or (done.reps > FAR_ABOVE * high and not goes_on):
            yield LogFinding("repetitions", session.on, done.exercise, done.number, done.reps, limit=(low, high))
