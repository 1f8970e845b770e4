"""What one running desk has: its book, its catalogue, its search processes and its keys."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import dataclass, field
from pathlib import Path
from threading import Lock
from typing import Final

from starlette.requests import Request

from setwright.catalogue.entries import Catalogue
from setwright.solver.book.opened import Book
from setwright.solver.book.pool import BookPool
from setwright.solver.desk.clock import seconds
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

    _books: BookPool = field(init=False)

    def __post_init__(self) -> None:
        object.__setattr__(self, "_books", BookPool(self.place, "the desk"))

    @contextmanager
    def turn(self, code: str) -> Iterator[None]:
        """The turn of one who acts on a client: the acts of two windows come one after the other."""
        with self._turns[code.removeprefix("@").casefold()]:
            yield

    def wait_for(self, search: str) -> None:
        """Note that a window out of sight still waits for a search, by its id."""
        for gone in [one for one, until in list(self._waited.items()) if until < seconds()]:
            self._waited.pop(gone, None)
        self._waited[search] = seconds() + WAITED_SECONDS

    def is_waited_for(self, search: str) -> bool:
        """Whether a window out of sight waits for a search, by its id."""
        return self._waited.get(search, 0.0) > seconds()

    @contextmanager
    def book(self) -> Iterator[Book]:
        """The book, open for one request; raises SetwrightError."""
        with self._books.book() as book:
            yield book

    def close(self) -> None:
        """End the searches, and close the book."""
        self.crew.close()
        self._books.close()

    def task(self, name: str, **arguments: object) -> Task:
        """A task for the search processes, under the desk's catalogue."""
        return Task(name, arguments, self.overlay)


def desk_of(request: Request) -> Desk:
    """The desk that a request came to."""
    desk: Desk = request.app.state.desk
    return desk
