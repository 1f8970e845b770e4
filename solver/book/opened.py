"""The book opened: one SQLite file that only its owner can read, brought to the newest version, written durably."""

from __future__ import annotations

import os
import sqlite3
import stat
from collections.abc import Iterator
from contextlib import closing, contextmanager
from datetime import UTC, datetime
from functools import partial
from pathlib import Path
from typing import Final

from setwright.catalogue.faults import Fault, SetwrightError
from setwright.solver.book.migrations import migrate, steps, version_of
from setwright.solver.book.trouble import told

APPLICATION: Final = 0x53657477
"""Marks the file as a book of ours (the letters Setw), so that no other database is written to."""
OTHERS: Final = stat.S_IRWXG | stat.S_IRWXO
"""The permissions of everyone but the owner."""
WAIT_SECONDS: Final = 10.0
"""How long a write waits for another process before it says so."""
OUTER: Final = ("BEGIN IMMEDIATE", "COMMIT", ("ROLLBACK",))
INNER: Final = ("SAVEPOINT part", "RELEASE part", ("ROLLBACK TO part", "RELEASE part"))
"""How a transaction, and a part of one, begins, ends and is undone."""
LEAST_SQLITE: Final = (3, 37, 0)
"""The first SQLite with strict tables."""


class Book:
    """An open book; its reads see whole transactions only, and its writes stand inside `writing`."""

    def __init__(self, connection: sqlite3.Connection, path: Path, through: str = "") -> None:
        self.connection = connection
        self.path = path
        self.through = through
        """By which way what is written comes: the desk, a command."""
        self.acts: dict[int, int] = {}
        """Row of a client -> the act that the transaction at hand is for them."""
        self._moment: str | None = None

    @property
    def now(self) -> str:
        """The moment at hand; within a transaction always the same, so that all rows of one act carry one time."""
        if not self.connection.in_transaction:
            return moment()
        self._moment = self._moment or moment()
        return self._moment

    @contextmanager
    def writing(self) -> Iterator[sqlite3.Connection]:
        """All that is written inside, or nothing; on the disk when this ends, or the `writing` around it.

        Raises SetwrightError.
        """
        inner = self.connection.in_transaction
        begin, end, undo = INNER if inner else OUTER
        with told(self.path):
            self.connection.execute(begin)
            if not inner:
                self._moment = None
            before = dict(self.acts) if inner else {}
            self.acts = dict(before)
            try:
                yield self.connection
                self.connection.execute(end)
            except BaseException:
                self.acts = before
                for statement in undo if self.connection.in_transaction else ():
                    self.connection.execute(statement)
                raise

    def rows(self, query: str, *values: object) -> list[sqlite3.Row]:
        """The rows of a query; raises SetwrightError where the file cannot be read."""
        with told(self.path):
            return self.connection.execute(query, values).fetchall()


@contextmanager
def open_book(path: Path, wait: float = WAIT_SECONDS, through: str = "", any_thread: bool = False) -> Iterator[Book]:
    """The book at a path, made where there is none yet; `wait` in seconds, `through` says by which way it is written.

    With `any_thread` one thread after the other may use it, where else the one that opened it may alone.
    Raises SetwrightError where others can read the file, or it is no book, of a newer version, damaged, or cannot be
    written.
    """
    if sqlite3.sqlite_version_info < LEAST_SQLITE:
        said = f"this Python has SQLite {sqlite3.sqlite_version}, the book needs 3.37"
        raise SetwrightError(Fault(str(path), said, "use a newer Python"))
    with told(path):
        _make_private(path)
        connect = partial(sqlite3.connect, path, timeout=wait, isolation_level=None)
        with closing(connect(check_same_thread=not any_thread)) as connection:
            connection.row_factory = sqlite3.Row
            _prepare(connection, path)
            yield Book(connection, path, through)


def moment() -> str:
    """The moment at hand as the book writes it: UTC, whole seconds, in the order of the alphabet."""
    return datetime.now(UTC).strftime("%Y-%m-%dT%H:%M:%SZ")


def _make_private(path: Path) -> None:
    """The file made for its owner alone where there is none; raises SetwrightError where others can read it."""
    try:
        found = path.stat()
    except FileNotFoundError:
        path.parent.mkdir(mode=0o700, parents=True, exist_ok=True)
        os.close(os.open(path, os.O_CREAT | os.O_RDWR, 0o600))
        return
    if stat.S_ISDIR(found.st_mode):
        raise SetwrightError(Fault(str(path), "is a folder, expected a book's file", "name a file"))
    if os.name == "posix" and found.st_mode & OTHERS:
        said = f"others can read or write this book (permissions {stat.S_IMODE(found.st_mode):o})"
        raise SetwrightError(Fault(str(path), said, f"chmod 600 {path}"))


def _prepare(connection: sqlite3.Connection, path: Path) -> None:
    """Durable writes, references held, deleted bytes overwritten, the newest tables."""
    connection.execute("PRAGMA trusted_schema = OFF")
    connection.execute("BEGIN")
    empty = not connection.execute("SELECT 1 FROM sqlite_master LIMIT 1").fetchone()
    mark, version = int(connection.execute("PRAGMA application_id").fetchone()[0]), version_of(connection)
    connection.execute("COMMIT")
    if mark != APPLICATION and not (mark == 0 and empty):
        raise SetwrightError(Fault(str(path), "is a database of another program", "name a book, or a new file"))
    if version > len(steps()):
        said = f"is a book of version {version}, this program knows versions up to {len(steps())}"
        raise SetwrightError(Fault(str(path), said, "use the newer setwright that wrote it"))
    connection.execute("PRAGMA foreign_keys = ON")
    connection.execute("PRAGMA secure_delete = ON")
    if version < len(steps()):
        connection.execute("PRAGMA journal_mode = WAL")
        connection.execute(f"PRAGMA application_id = {APPLICATION}")
        migrate(connection)
    connection.execute("PRAGMA synchronous = FULL")
