"""A book with a client in it, and sessions of invented people."""

from __future__ import annotations

from collections.abc import Iterator
from datetime import date
from pathlib import Path
from typing import Any

import pytest

from setwright.solver.book.clients import Client, add_client
from setwright.solver.book.opened import Book, open_book
from setwright.solver.log.values import LoggedSession, LoggedSet

RAW: dict[str, Any] = {
    "days": [{"minutes": 40, "weekday": "mon"}, {"minutes": 40, "weekday": "thu"}],
    "client": {"code": "M", "age": 64, "cautions": [{"tag": "knee"}], "unit": "kg"},
}


def session(day: int, number: int = 1, reps: int = 8) -> LoggedSession:
    """A session of two sets on a day of May."""
    sets = tuple(LoggedSet("barbell-back-squat", n, reps - n, load=80.0, rir=2) for n in (1, 2))
    return LoggedSession(date(2026, 5, day), sets, "kg", week=1, session=number)


@pytest.fixture
def place(tmp_path: Path) -> Path:
    """Where the book is made."""
    return tmp_path / "a folder" / "book.db"


@pytest.fixture
def book(place: Path) -> Iterator[Book]:
    """An empty book."""
    with open_book(place) as found:
        yield found


@pytest.fixture
def client(book: Book) -> Client:
    """An invented client with health notes."""
    return add_client(book, "M", RAW)
