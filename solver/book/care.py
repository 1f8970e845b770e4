"""The book looked after: a backup, a check of the whole file, and a client erased."""

from __future__ import annotations

import os
import sqlite3
from contextlib import closing, suppress
from pathlib import Path

from setwright.catalogue.faults import Fault, UsageFault
from setwright.solver.book.clients import Client
from setwright.solver.book.migrations import steps, version_of
from setwright.solver.book.opened import Book
from setwright.solver.book.trouble import told


def backup(book: Book, target: Path) -> None:
    """Copy the whole book to a new file, also while others write; raises UsageFault where the place is taken."""
    with told(target):
        try:
            os.close(os.open(target, os.O_CREAT | os.O_EXCL | os.O_RDWR, 0o600))
        except FileExistsError:
            raise UsageFault(Fault(str(target), "there is a file already", "name another place")) from None
        try:
            with closing(sqlite3.connect(target, isolation_level=None)) as copy:
                book.connection.backup(copy)
                copy.execute("PRAGMA journal_mode = DELETE")
        except BaseException:
            with suppress(OSError):
                target.unlink()
            raise


def saved_before_migration(path: Path) -> Path | None:
    """The copy that was made of a book of an older version, as it was; None where it is of this version, or not there.

    Raises SetwrightError where the copy cannot be written. A copy that stands there already is left as it is.
    """
    if not path.is_file():
        return None
    with told(path), closing(sqlite3.connect(f"{path.absolute().as_uri()}?mode=ro", uri=True)) as connection:
        version = version_of(connection)
        if not 0 < version < len(steps()):
            return None
        copy = path.with_name(f"{path.stem}-version-{version}{path.suffix}")
        if not copy.exists():
            backup(Book(connection, path), copy)
    return copy


def check(book: Book) -> tuple[str, ...]:
    """What is amiss with the file: damaged pages, rows without what they refer to; empty where all is well."""
    pages = [row[0] for row in book.rows("PRAGMA integrity_check")]
    held = book.rows("PRAGMA foreign_key_check")
    orphans = [f"a row of {row[0]} refers to a row of {row[2]} that is gone" for row in held]
    return tuple(said for said in (*pages, *orphans) if said != "ok")


def erase(book: Book, client: Client) -> None:
    """Delete all rows of a client, their bytes overwritten and the file packed: nothing of them is left in it."""
    with book.writing() as connection:
        connection.execute("INSERT INTO erasing VALUES (?)", (client.id,))
        for table in ("session", "import", "block", "week", "brief"):
            connection.execute(f"DELETE FROM {table} WHERE client = ?", (client.id,))
        connection.execute("DELETE FROM client WHERE id = ?", (client.id,))
    with told(book.path):
        book.connection.execute("PRAGMA wal_checkpoint(TRUNCATE)")
        book.connection.execute("VACUUM")
        book.connection.execute("PRAGMA wal_checkpoint(TRUNCATE)")
