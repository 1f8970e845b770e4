"""Sessions and sets as rows of the book, and rows as sessions and sets."""

from __future__ import annotations

import hashlib
import sqlite3
from collections.abc import Iterable
from datetime import date, datetime
from typing import Any, Final

from setwright.solver.book.clients import Client
from setwright.solver.book.opened import Book
from setwright.solver.log.unread import UnreadRow
from setwright.solver.log.values import LoggedSession, LoggedSet

IN_TIME: Final = "held_on, coalesce(started, ''), coalesce(number, 0), id"
"""The order in which the sessions of a client were held."""


def import_row(book: Book, client: Client, source: bytes, unread: Iterable[UnreadRow]) -> int:
    """The row of an import; the same file again has the same row."""
    connection, digest = book.connection, hashlib.sha256(source).hexdigest()
    if (known := _import_of(connection, client, digest)) is not None:
        return known
    values = (client.id, book.now, digest)
    row = connection.execute("INSERT INTO import (client, made, digest) VALUES (?, ?, ?)", values).lastrowid or 0
    connection.executemany("INSERT INTO unread VALUES (?, ?, ?, ?)", ((row, u.place, u.text, u.why) for u in unread))
    return row


def was_imported(connection: sqlite3.Connection, client: Client, source: bytes) -> bool:
    """Whether a client has an import of the same bytes."""
    return _import_of(connection, client, hashlib.sha256(source).hexdigest()) is not None


def _import_of(connection: sqlite3.Connection, client: Client, digest: str) -> int | None:
    row = connection.execute("SELECT id FROM import WHERE client = ? AND digest = ?", (client.id, digest)).fetchone()
    return None if row is None else int(row["id"])


def write_session(
    book: Book, client: Client, session: LoggedSession, imported: int | None, replaces: int | None
) -> int:
    """One session with its sets; its row comes back."""
    fields = "client, made, import, replaces, held_on, week, number, unit, started, ended, minutes, how_hard, note"
    values = (
        client.id,
        book.now,
        imported,
        replaces,
        session.on.isoformat(),
        session.week,
        session.session,
        session.unit,
        _time(session.started),
        _time(session.ended),
        session.minutes,
        session.how_hard,
        session.note,
    )
    marks = ", ".join("?" * len(values))
    row = book.connection.execute(f"INSERT INTO session ({fields}) VALUES ({marks})", values).lastrowid or 0
    book.connection.executemany(
        "INSERT INTO set_done VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?)",
        (
            (row, place, s.exercise, s.number, s.load, s.reps, s.rir, s.side, _time(s.ended))
            for place, s in enumerate(session.sets, 1)
        ),
    )
    return row


def session_of(row: Any, sets: Iterable[LoggedSet]) -> LoggedSession:
    """A row with its sets as a value."""
    return LoggedSession(
        on=date.fromisoformat(row["held_on"]),
        sets=tuple(sets),
        unit=row["unit"],
        week=row["week"],
        session=row["number"],
        started=_read(row["started"]),
        ended=_read(row["ended"]),
        minutes=row["minutes"],
        how_hard=row["how_hard"],
        note=row["note"],
    )


def set_of(row: Any) -> LoggedSet:
    """A row as a set."""
    fields = ("exercise", "number", "reps", "load", "rir", "side")
    return LoggedSet(**{field: row[field] for field in fields}, ended=_read(row["ended"]))


def _time(at: datetime | None) -> str | None:
    """A local time as it is kept."""
    return None if at is None else at.isoformat()


def _read(written: str | None) -> datetime | None:
    """A local time as it was kept."""
    return None if written is None else datetime.fromisoformat(written)
