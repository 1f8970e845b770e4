"""The session that a client does on a day: which of the week's it is, and the target of each of its lines."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date, timedelta

from setwright.catalogue.entries import Catalogue
from setwright.catalogue.faults import Fault, UsageFault
from setwright.solver.auditing import Audit
from setwright.solver.book.clients import Client
from setwright.solver.book.opened import Book
from setwright.solver.book.sessions import sessions_of
from setwright.solver.evaluation.evaluated_week import EvaluatedWeek
from setwright.solver.log.mondays import monday_of
from setwright.solver.log.values import LoggedSession
from setwright.solver.records.kept_blocks import blocks_of, week_on
from setwright.solver.records.week_at_hand import as_it_stands, week_at_hand
from setwright.solver.uses.log.planned_day import planned_day, weekdays_of
from setwright.solver.uses.progress.in_block import block_targets, kits_of
from setwright.solver.uses.progress.next_targets import NextTarget, next_targets


@dataclass(frozen=True)
class SessionAtHand:
    """One session of a planned week, and when the week's sessions were done."""

    on: date
    audit: Audit
    day: int
    """Its index in the week."""
    targets: tuple[NextTarget, ...]
    """Of its lines, in their order."""
    done_on: tuple[date | None, ...]
    """When each session of the week was logged; None where it was not."""

    @property
    def evaluated(self) -> EvaluatedWeek:
        """The week evaluated."""
        return self.audit.evaluated

    def is_of_it(self, session: LoggedSession) -> bool:
        """Whether a logged session of that day stands for it."""
        return session.on == self.on and _day_of(session, self.audit) == self.day


def session_at_hand(
    book: Book, client: Client, catalogue: Catalogue, on: date, number: int | None = None
) -> SessionAtHand | None:
    """The session due on a day: the one of its weekday, else the first that is not done; `number` names another.

    None where no week is planned for the day. Raises UsageFault for a number that the week does not have, and where
    logged loads are in another unit.
    """
    sessions = sessions_of(book, client)
    found = _planned(book, client, catalogue, on, sessions)
    if found is None:
        return None
    audit, targets = found
    done = _done_on(audit, on, sessions)
    if number is not None and not 1 <= number <= len(done):
        raise UsageFault(Fault("session", f"got {number}, the week has {len(done)}", f"name one from 1 to {len(done)}"))
    day = _due(audit, on, done) if number is None else number - 1
    return SessionAtHand(on, audit, day, tuple(one for one in targets if one.day == day), done)


def _planned(
    book: Book, client: Client, catalogue: Catalogue, on: date, sessions: tuple[LoggedSession, ...]
) -> tuple[Audit, tuple[NextTarget, ...]] | None:
    """The week that a day stands in, as it stands, with all its targets."""
    blocks = tuple(blocks_of(book, client, catalogue).values())
    week = next((week for block in reversed(blocks) if (week := week_on(block, on)) is not None), None)
    if week is not None and week.audit is not None:
        week = as_it_stands(book, client, week, catalogue)
        assert week.audit is not None
        return week.audit, block_targets(week, sessions, on, blocks)
    kept = week_at_hand(book, client, catalogue, on)
    if kept is None:
        return None
    week_lines, kits = kept.audit.evaluated.week, kits_of(kept.audit.evaluated)
    return kept.audit, next_targets(week_lines, sessions, kits, catalogue, client.unit, on)


def _done_on(audit: Audit, on: date, sessions: tuple[LoggedSession, ...]) -> tuple[date | None, ...]:
    monday = monday_of(on)
    held = [s for s in sessions if monday <= s.on < monday + timedelta(weeks=1)]
    done = {_day_of(session, audit): session.on for session in held}
    return tuple(done.get(day) for day in range(len(audit.evaluated.on)))


def _day_of(session: LoggedSession, audit: Audit) -> int | None:
    return planned_day(session, audit.evaluated.week, weekdays_of(audit))


def _due(audit: Audit, on: date, done: tuple[date | None, ...]) -> int:
    """The session done on that very day or meant for its weekday, else the first that is left, else the last."""
    if on in done:
        return done.index(on)
    weekdays = weekdays_of(audit)
    if on.weekday() in weekdays:
        return weekdays.index(on.weekday())
    return next((day for day, when in enumerate(done) if when is None), len(done) - 1)
