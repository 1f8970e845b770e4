"""A book that is read and written again and again by many threads: connections are kept open between two uses."""

from __future__ import annotations

import sqlite3
from collections.abc import Iterator
from contextlib import ExitStack, contextmanager
from pathlib import Path
from threading import Lock
from typing import Final

from setwright.solver.book.migrations import steps, version_of
from setwright.solver.book.opened import Book, open_book

MOST_IDLE: Final = 8
"""Connections that are kept open while nobody uses them."""
Kind = tuple[int, int, int] | None
"""Device, inode and permissions of a file: what tells another file of the same name, and who may read it."""


class BookPool:
    """Hands out the open book to one user at a time, opened as often as there are users at once.

    To open a book costs more than to ask it for a page; and SQLite's last connection to go tidies up the file as it
    closes, which the next to come pays for again.
    """

    def __init__(self, path: Path, through: str) -> None:
        """`through` says by which way is written."""
        self._path, self._through = path, through
        self._lock = Lock()
        self._idle: list[tuple[Book, Kind, ExitStack]] = []
        self._closed = False

    @contextmanager
    def book(self) -> Iterator[Book]:
        """The book, open for one use; raises SetwrightError as `open_book` does.

        A file that was put in its place meanwhile, was brought to another version or may be read by others now is
        looked at as when a book is opened.
        """
        book, kind, held = self._taken() or self._opened()
        try:
            yield book
        finally:
            with self._lock:
                kept = not self._closed and len(self._idle) < MOST_IDLE and not book.connection.in_transaction
                if kept:
                    self._idle.append((book, kind, held))
            if not kept:
                held.close()

    def close(self) -> None:
        """Close what is open: at once what is idle, and what is in use when it is handed back."""
        with self._lock:
            self._closed, idle, self._idle = True, self._idle, []
        for _, _, held in idle:
            held.close()

    def _taken(self) -> tuple[Book, Kind, ExitStack] | None:
        """An idle connection to the file that stands there now, the one used last; None where there is none."""
        now = _kind_of(self._path)
        while True:
            with self._lock:
                if not self._idle:
                    return None
                book, kind, held = self._idle.pop()
            if kind == now and _is_of_today(book):
                return book, kind, held
            held.close()

    def _opened(self) -> tuple[Book, Kind, ExitStack]:
        held = ExitStack()
        book = held.enter_context(open_book(self._path, through=self._through, any_thread=True))
        return book, _kind_of(self._path), held


def _is_of_today(book: Book) -> bool:
    """Whether an open book can be read and is of the newest version; `open_book` says in words what else it is."""
    try:
        return version_of(book.connection) == len(steps())
    except sqlite3.Error:
        return False


def _kind_of(path: Path) -> Kind:
    """What a file is; nothing where none stands there."""
    try:
        found = path.stat()
    except OSError:
        return None
    return found.st_dev, found.st_ino, found.st_mode
