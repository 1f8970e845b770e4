"""How a client stands, gathered from the book for the screen."""

from __future__ import annotations

from datetime import date

from setwright.solver.book.clients import Client, changes, client_of, clients
from setwright.solver.book.opened import Book
from setwright.solver.book.planned import blocks, week_days
from setwright.solver.book.sessions import session_days
from setwright.solver.records.due import due_of
from setwright.solver.sheets.screen.over_time.clients import Standing


def standings(book: Book, today: date | None = None) -> list[Standing]:
    """Every client in the order of the codes, with what is due today, or on the day given."""
    return [_standing(book, client, today or date.today()) for client in clients(book)]


def standing_of(book: Book, code: str, today: date | None = None) -> Standing:
    """One client, with what is due today, or on the day given; raises UsageFault for an unknown code."""
    return _standing(book, client_of(book, code), today or date.today())


def _standing(book: Book, client: Client, today: date) -> Standing:
    sessions = session_days(book, client)
    return Standing(
        code=client.code,
        name=client.name,
        resting_since=client.resting_since,
        brief=client.brief,
        version=client.version,
        blocks=tuple((block.starts, block.ends) for block in blocks(book, client)),
        weeks=week_days(book, client),
        sessions=len(sessions),
        last=sessions[-1] if sessions else None,
        changes=changes(book, client),
        due=due_of(book, client, sessions, today),
    )
