"""How a client stands, gathered from the book for the screen."""

from __future__ import annotations

from datetime import date

from setwright.catalogue.entries import Catalogue
from setwright.solver.book.at_once.held import Held, held
from setwright.solver.book.clients import Client
from setwright.solver.book.opened import Book
from setwright.solver.records.due import due_of, near
from setwright.solver.sheets.screen.over_time.clients import Standing


def standings(book: Book, catalogue: Catalogue, today: date) -> list[Standing]:
    """Every client in the order of the codes, with what is due on a day."""
    return [_standing(of, catalogue, today) for of in held(book, near(today))]


def standing_of(book: Book, client: Client, catalogue: Catalogue, today: date) -> Standing:
    """One client, with what is due on a day."""
    (found,) = held(book, near(today), client)
    return _standing(found, catalogue, today)


def _standing(of: Held, catalogue: Catalogue, today: date) -> Standing:
    client, sessions = of.client, of.sessions
    return Standing(
        code=client.code,
        name=client.name,
        resting_since=client.resting_since,
        brief=client.brief,
        version=client.version,
        blocks=tuple((block.starts, block.ends) for block in of.blocks),
        weeks=tuple((week.starts, week.why) for week in of.weeks),
        sessions=len(sessions),
        last=sessions[-1].on if sessions else None,
        changes=of.changes,
        due=due_of(of, catalogue, today),
    )
