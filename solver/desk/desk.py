"""What one running desk has: its book, its catalogue, its search processes and its keys."""

from __future__ import annotations

from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import dataclass, field
from pathlib import Path

from starlette.requests import Request

from setwright.catalogue.entries import Catalogue
from setwright.solver.book.opened import Book, open_book
from setwright.solver.desk.guard import Keys
from setwright.solver.desk.passwords import Entrance
from setwright.solver.desk.searches.crew import Crew
from setwright.solver.desk.searches.task import Task


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

    @contextmanager
    def book(self) -> Iterator[Book]:
        """The book, open for one request; raises SetwrightError."""
        with open_book(self.place) as book:
            yield book

    def task(self, name: str, **arguments: object) -> Task:
        """A task for the search processes, under the desk's catalogue."""
        return Task(name, arguments, self.overlay)


def desk_of(request: Request) -> Desk:
    """The desk that a request came to."""
    desk: Desk = request.app.state.desk
    return desk
