"""What one running desk has: its book, its catalogue, its search processes and its keys."""

from __future__ import annotations

import time
from collections import defaultdict
from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import dataclass, field
from functools import cached_property
from pathlib import Path
from threading import Lock
from typing import Final

from starlette.requests import Request

from setwright.catalogue.entries import Catalogue
from setwright.solver.book.opened import Book
from setwright.solver.book.pool import BookPool
from setwright.solver.desk.entry.guard import Keys
from setwright.solver.desk.entry.passwords import Entrance
from setwright.solver.desk.searches.crew import Crew
from setwright.solver.desk.searches.task import Task

WAITED_SECONDS: Final = 120.0
"""How long the word of a window out of sight holds; a browser wakes such a window once a minute, or more often."""


@dataclass(frozen=True)
class Desk:
    """One running desk."""

    place: Path
    """The book's file."""
    catalogue: Catalogue
    crew: Crew
    keys: Keys
    entrance: Entrance = field(default_factory=lambda: Entrance(None))
    overlay: str | None = None
    """The path of the coach's own catalogue file."""
    _turns: defaultdict[str, Lock] = field(default_factory=lambda: defaultdict(Lock))
    _waited: dict[str, float] = field(default_factory=dict)
    """Id of a search -> until when a window out of sight is known to wait for it."""

    @contextmanager
    def turn(self, code: str) -> Iterator[None]:
        """The turn of one who acts on a client: the acts of two windows come one after the other."""
        with self._turns[code.casefold()]:
            yield

    def wait_for(self, search: str) -> None:
        """Note that a window out of sight still waits for a search, by its id."""
        self._waited[search] = time.monotonic() + WAITED_SECONDS

    def is_waited_for(self, search: str) -> bool:
        """Whether a window out of sight waits for a search, by its id."""
        return self._waited.get(search, 0.0) > time.monotonic()

    @contextmanager
    def book(self) -> Iterator[Book]:
        """The book, open for one request; raises SetwrightError."""
        with self._books.book() as book:
            yield book

    def close(self) -> None:
        """End the searches, and close the book."""
        self.crew.close()
        self._books.close()

    @cached_property
    def _books(self) -> BookPool:
        return BookPool(self.place, "the desk")

    def task(self, name: str, **arguments: object) -> Task:
        """A task for the search processes, under the desk's catalogue."""
        return Task(name, arguments, self.overlay)


def desk_of(request: Request) -> Desk:
    """The desk that a request came to."""
    desk: Desk = request.app.state.desk
    return desk
