"""Logged sessions that were done whole, with what they took and what the clock says of their day."""

from __future__ import annotations

from collections import Counter
from collections.abc import Sequence
from dataclasses import dataclass

from setwright.solver.evaluation.evaluated_week import EvaluatedWeek
from setwright.solver.log.values import LoggedSession
from setwright.solver.uses.progress.done_against_planned import minutes_taken
from setwright.solver.uses.progress.matching import day_of


@dataclass(frozen=True)
class WholeSession:
    """Seconds of a session with every planned set and no other: taken, and planned without what is left as spare."""

    taken: float
    planned: float


def whole_sessions(evaluated: EvaluatedWeek, sessions: Sequence[LoggedSession]) -> tuple[WholeSession, ...]:
    """The sessions that say how long they took and were done whole, in the order given."""
    found = []
    for session in sessions:
        day, minutes = day_of(session, evaluated.week), minutes_taken(session)
        if day is not None and minutes and minutes > 0 and _done_whole(session, evaluated, day):
            found.append(WholeSession(60 * minutes, float(_planned(evaluated, day))))
    return tuple(found)


def _planned(evaluated: EvaluatedWeek, day: int) -> int:
    """A day's seconds; a warm-up that the clock tells is taken whole, because the client does it whole."""
    told = evaluated.resolved.brief.clock.warm_up
    return evaluated.seconds(day) if told is None else evaluated.work_seconds(day) + told


def _done_whole(session: LoggedSession, evaluated: EvaluatedWeek, day: int) -> bool:
    """Whether the sets done are the planned ones; a session without logged sets is taken to be whole."""
    if not session.sets:
        return True
    sides = Counter((done.exercise, done.side) for done in session.sets)
    done: Counter[str] = Counter()
    for (exercise, side), count in sides.items():
        done[exercise] = max(done[exercise], count) if side else done[exercise] + count
    return done == Counter({entry.exercise: entry.sets for entry in evaluated.week.days[day]})
