"""What was done: sessions written once, corrected by new rows, read back as values."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date, datetime

from setwright.catalogue.faults import Fault, UsageFault
from setwright.solver.book.clients import Client
from setwright.solver.book.journal import note_row, that_hold
from setwright.solver.book.opened import Book
from setwright.solver.book.session_rows import IN_TIME, import_row, session_of, set_of, was_imported, write_session
from setwright.solver.log.unread import UnreadRow
from setwright.solver.log.values import LoggedSession, LoggedSet


@dataclass(frozen=True)
class Kept:
    """What became of sessions: those written down, those that were there already, and those that took a place."""

    written: int
    there_already: int
    replaced: int


def log_sessions(
    book: Book,
    client: Client,
    sessions: Sequence[LoggedSession],
    unread: Sequence[UnreadRow] = (),
    source: bytes | None = None,
    replace: bool = False,
    once: bool = False,
) -> Kept:
    """Write sessions down, all of them or none; the same session twice is written once.

    `source` is the file they were read from, None where they were typed; with `once` a source that was written down
    before is not again, whatever stands there now. Raises UsageFault where another session stands at the same date and
    number and is not to be replaced.
    """
    with book.writing() as connection:
        if once and source is not None and was_imported(connection, client, source):
            return Kept(0, len(sessions), 0)
        standing = {_place(s): (s, row) for row, s in _standing(book, client)}
        known = [standing.get(_place(s)) for s in sessions]
        clashes = [s for s, k in zip(sessions, known, strict=True) if k is not None and k[0] != s]
        if clashes and not replace:
            raise UsageFault(_taken(s) for s in clashes)
        imported = None if source is None else import_row(book, client, source, unread)
        for session, before in zip(sessions, known, strict=True):
            if before is None or before[0] != session:
                row = write_session(book, client, session, imported, before and before[1])
                note_row(book, client.id, "session", row)
    there = sum(1 for s, k in zip(sessions, known, strict=True) if k is not None and k[0] == s)
    return Kept(len(sessions) - there, there, len(clashes))


def was_taken(book: Book, client: Client, source: bytes) -> bool:
    """Whether sessions of this source were written down before."""
    return was_imported(book.connection, client, source)


def sessions_of(book: Book, client: Client) -> tuple[LoggedSession, ...]:
    """A client's sessions as they hold, those replaced or taken back left out, in the order of their dates."""
    return tuple(session for _, session in _standing(book, client))


def session_at(book: Book, client: Client, like: LoggedSession) -> LoggedSession | None:
    """The session that holds at another's day and number; None where there is none."""
    return next((s for s in sessions_of(book, client) if _place(s) == _place(like)), None)


def unread_of(book: Book, client: Client) -> tuple[UnreadRow, ...]:
    """What the imports of a client did not understand, in the order in which it came."""
    query = "SELECT u.* FROM unread u JOIN import ON import.id = u.import WHERE client = ? ORDER BY u.rowid"
    return tuple(UnreadRow(r["place"], r["text"], r["why"]) for r in book.rows(query, client.id))


def _standing(book: Book, client: Client) -> list[tuple[int, LoggedSession]]:
    """(row, session) of those that hold."""
    query = f"SELECT * FROM session WHERE client = ? AND {that_hold('session')} ORDER BY {IN_TIME}"
    held = "SELECT s.* FROM set_done s JOIN session ON session.id = s.session WHERE client = ? ORDER BY session, place"
    sets: dict[int, list[LoggedSet]] = {}
    for row in book.rows(held, client.id):
        sets.setdefault(row["session"], []).append(set_of(row))
    return [(row["id"], session_of(row, sets.get(row["id"], ()))) for row in book.rows(query, client.id)]


def _place(session: LoggedSession) -> tuple[date, int | None, datetime | None]:
    """What tells two sessions of a client apart: the day, and there the number or the start."""
    return session.on, session.session, None if session.session else session.started


def _taken(session: LoggedSession) -> Fault:
    """That another session stands where this one would."""
    number = f", session {session.session}" if session.session else ""
    said = "another session is logged there with other sets"
    remedy = "--replace writes this one in its place; the old one is kept"
    on_page = "mark that a session may take the place of another; the old one is kept"
    return Fault(f"{session.on}{number}", said, remedy, on_page)
