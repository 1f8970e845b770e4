"""What tests ask of a book."""

from __future__ import annotations

from datetime import date

from setwright.solver.book.at_once.held import held
from setwright.solver.book.clients import Client
from setwright.solver.book.opened import Book


def clients(book: Book) -> tuple[Client, ...]:
    """Every client, in the order of the codes."""
    return tuple(of.client for of in held(book, (date.min, date.max)))
