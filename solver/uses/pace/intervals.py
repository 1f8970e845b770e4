"""The times between the ends of two sets that follow each other, each beside what the plan asks for it."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from datetime import datetime
from typing import Literal

from setwright.catalogue.entries import Exercise
from setwright.solver.evaluation.evaluated_week import EvaluatedWeek, Line
from setwright.solver.evaluation.prescriptions import change_over
from setwright.solver.log.values import LoggedSession, LoggedSet
from setwright.solver.uses.progress.matching import day_of

Kind = Literal["warm-up", "rest", "pair", "change"]
LONGEST = 3600
"""Seconds between two sets that are still one session; what is longer is a slip in the log (convention)."""


@dataclass(frozen=True)
class Interval:
    """From the end of one set, or the start of the session, to the end of the next set."""

    session: int
    """The place of the session among those given."""
    kind: Kind
    seconds: float
    """As taken."""
    asked: float
    """What the plan asks for in it beside repetitions and the general warm-up: rest, change-over, ramp-up, walk."""
    repetitions: float
    """Repetitions of the set at its end, of both sides and both legs."""
    rests: int = 1
    """The number of rests in it; two where each side of a limb is followed by one."""


def intervals_of(evaluated: EvaluatedWeek, sessions: Sequence[LoggedSession]) -> tuple[tuple[Interval, ...], int]:
    """All intervals that can be read, and the number of those between sets with times that cannot.

    Left out: sets that the day's plan does not have, last sets with a technique, holds, from one side to the other
    without a rest, and times that go back or are over an hour.
    """
    found: list[Interval] = []
    left_out = 0
    for place, session in enumerate(sessions):
        day = day_of(session, evaluated.week)
        if day is None:
            continue
        for interval in _SessionReader(evaluated, day, place).read(session):
            if interval is None:
                left_out += 1
            else:
                found.append(interval)
    return tuple(found), left_out


class _SessionReader:
    """Reads one session in the order it was done, with the regions that were ramped up for so far."""

    def __init__(self, evaluated: EvaluatedWeek, day: int, place: int) -> None:
        self.evaluated, self.day, self.place = evaluated, day, place
        self.lines = {line.exercise.id: line for line in evaluated.on[day]}
        self.ramped: set[str] = set()

    def read(self, session: LoggedSession) -> Iterator[Interval | None]:
        """The intervals of a session; None for one that cannot be read."""
        before: LoggedSet | None = None
        end = session.started
        for done in session.sets:
            line = self.lines.get(done.exercise)
            ramp = 0.0 if line is None else self._ramp(line.exercise)
            if end is not None and done.ended is not None:
                yield self._interval(before, done, line, ramp, (end, done.ended))
            before, end = done, done.ended

    def _ramp(self, exercise: Exercise) -> float:
        """The planned ramp-up before the first set of a region's multi-joint lifts; nothing from then on."""
        if not exercise.multi_joint or exercise.region in self.ramped:
            return 0.0
        self.ramped.add(exercise.region)
        return float(self.evaluated.ramp_up.get((self.day, exercise.region), 0))

    def _interval(
        self,
        before: LoggedSet | None,
        done: LoggedSet,
        line: Line | None,
        ramp: float,
        ends: tuple[datetime, datetime],
    ) -> Interval | None:
        seconds = (ends[1] - ends[0]).total_seconds()
        if line is None or line.exercise.timed or not 0 < seconds <= LONGEST or _technique(done, line):
            return None
        setting_up = max(0, change_over(self.evaluated.resolved, line.exercise) - line.entry.rest)
        reps = _repetitions(done, line.exercise)
        if before is None:
            return Interval(self.place, "warm-up", seconds, ramp + setting_up, reps)
        previous = self.lines.get(before.exercise)
        if previous is None:
            return None
        if before.exercise == done.exercise:
            return self._next_set(before, done, line, seconds)
        if line.entry.partner == before.exercise and previous.place < line.place:
            asked = (self._walk() if line.partner.apart else 0) + (setting_up if done.number == 1 else 0)
            return Interval(self.place, "pair", seconds, asked, reps)
        if line.entry.partner == before.exercise:
            return Interval(self.place, "rest", seconds, line.entry.rest, reps)
        return Interval(self.place, "change", seconds, previous.entry.rest + setting_up + ramp, reps)

    def _next_set(self, before: LoggedSet, done: LoggedSet, line: Line, seconds: float) -> Interval | None:
        """The next set of the same exercise; None where one is missing between, or where only the side changes."""
        each, entry = line.exercise.rest_after_each_side, line.entry
        other_side = before.side is not None and done.side is not None and before.side != done.side
        if other_side and not each and done.number - before.number in (0, 1) and _second(before, done):
            return None
        if not other_side and done.number - before.number != 1:
            return None
        if entry.partner is not None:
            return None
        rests = 2 if each and done.side is None else 1
        reps = _repetitions(done, line.exercise)
        return Interval(self.place, "rest", seconds, rests * entry.rest, reps, rests)

    def _walk(self) -> float:
        return self.evaluated.resolved.number("pair-walk-seconds")


def _second(before: LoggedSet, done: LoggedSet) -> bool:
    """Whether a side follows its own first side: the numbers are the same, or the first of the two is odd."""
    return done.number == before.number or before.number % 2 == 1


def _technique(done: LoggedSet, line: Line) -> bool:
    """Whether a set is the last one of a line that ends with a technique."""
    return line.entry.technique != "straight" and done.number >= line.entry.sets


def _repetitions(done: LoggedSet, exercise: Exercise) -> float:
    """The repetitions that took time: of both sides or legs where the log counts each."""
    twice = exercise.alternating or (exercise.limb != "both" and done.side is None)
    return 2.0 * done.reps if twice else float(done.reps)
