"""The book's tables, made step by step: each file takes a book from one version to the next."""

from __future__ import annotations

import sqlite3
from functools import cache
from importlib import resources


@cache
def steps() -> tuple[str, ...]:
    """The SQL of every step in order; a book's version is the number of steps it has been through."""
    folder = resources.files(__name__)
    names = sorted(entry.name for entry in folder.iterdir() if entry.name.endswith(".sql"))
    return tuple((folder / name).read_text(encoding="utf-8") for name in names)


def version_of(connection: sqlite3.Connection) -> int:
    """How many steps a book has been through."""
    return int(connection.execute("PRAGMA user_version").fetchone()[0])


def migrate(connection: sqlite3.Connection, up_to: int | None = None) -> None:
    """Take a book through the steps it has not seen, each whole or not at all; raises sqlite3.Error."""
    wanted = len(steps()) if up_to is None else up_to
    for number in range(version_of(connection) + 1, wanted + 1):
        _take(connection, number)


def _take(connection: sqlite3.Connection, number: int) -> None:
    """One step; nothing where another process took it meanwhile."""
    connection.execute("BEGIN EXCLUSIVE")
    try:
        if version_of(connection) < number:
            for statement in statements(steps()[number - 1]):
                connection.execute(statement)
            connection.execute(f"PRAGMA user_version = {number}")
        connection.execute("COMMIT")
    except BaseException:
        connection.execute("ROLLBACK")
        raise


def statements(script: str) -> list[str]:
    """The statements of a script, each ending where SQLite says it is complete."""
    found: list[str] = []
    so_far = ""
    for line in script.splitlines(keepends=True):
        so_far += line
        if sqlite3.complete_statement(so_far):
            found.append(so_far.strip())
            so_far = ""
    return found
