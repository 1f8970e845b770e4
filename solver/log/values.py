"""Sessions and sets as they were done."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from datetime import date, datetime
from typing import Literal

from setwright.solver.brief.schema import Unit

Side = Literal["left", "right"]


@dataclass(frozen=True)
class LoggedSet:
    """One set as done; a drop set's drops and a rest-pause's bursts are one set, with all their repetitions."""

    exercise: str
    """The catalogue's id."""
    number: int
    """Counted from 1 within the exercise and session; ramp-up sets are not logged."""
    reps: int
    """Repetitions, or breaths of a hold, as the catalogue counts the lift; of each side where it is one limb's."""
    load: float | None = None
    """As the lift is loaded, in the session's unit: the bar with its plates, one dumbbell, the stack; None unsaid."""
    rir: int | None = None
    """Repetitions left in reserve, as the client felt it; None unsaid."""
    side: Side | None = None
    """Where one side's set is logged by itself."""
    ended: datetime | None = None
    """When the set was over, local time; None unsaid."""


@dataclass(frozen=True)
class LoggedSession:
    """One session as done, its sets in the order they were done."""

    on: date
    sets: tuple[LoggedSet, ...]
    unit: Unit = "kg"
    week: int | None = None
    """The week of the block, counted from 1, where the log says it."""
    session: int | None = None
    """The session of the week, counted from 1, where the log says it."""
    started: datetime | None = None
    ended: datetime | None = None
    """Local times without a zone, as the client's watch showed them; None unsaid."""
    minutes: float | None = None
    """How long it took as written down, where no times are."""
    how_hard: int | None = None
    """0 to 10 as the client said; None unsaid."""
    note: str = ""

    def followed_by(self, other: LoggedSession) -> LoggedSession:
        """This session with another's sets after its own, and what the other says of the session where it says it."""
        counted = Counter((done.exercise, done.side) for done in self.sets)
        more = tuple(replace(s, number=s.number + counted[s.exercise, s.side]) for s in other.sets)
        return replace(
            self,
            sets=(*self.sets, *more),
            ended=other.ended or self.ended,
            minutes=self.minutes if other.minutes is None else other.minutes,
            how_hard=self.how_hard if other.how_hard is None else other.how_hard,
            note="; ".join(part for part in (self.note, other.note) if part),
        )


def exposures(
    sessions: Sequence[LoggedSession], exercise: str
) -> Iterator[tuple[LoggedSession, tuple[LoggedSet, ...]]]:
    """Each session that has sets of an exercise, with those sets, in the order of the dates."""
    for session in sorted(sessions, key=lambda s: (s.on, s.started or datetime.min)):
        sets = tuple(s for s in session.sets if s.exercise == exercise)
        if sets:
            yield session, sets
