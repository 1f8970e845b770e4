"""How long a client takes, told from the book's log and taken over into the brief."""

from __future__ import annotations

from datetime import date

from setwright.catalogue.entries import Catalogue
from setwright.catalogue.faults import Fault, UsageFault
from setwright.solver.book.clients import Client, brief_of, keep_brief
from setwright.solver.book.opened import Book
from setwright.solver.book.paces import keep_pace
from setwright.solver.book.sessions import sessions_of
from setwright.solver.records.kept_blocks import block_at
from setwright.solver.sheets.document.progress.pace_document import pace_document
from setwright.solver.uses.pace.client_pace import ClientPace, NotEnough
from setwright.solver.uses.pace.reading import client_pace


def pace_of(book: Book, client: Client, catalogue: Catalogue, day: date) -> ClientPace | NotEnough:
    """The pace by the block of a day; raises UsageFault where there is no block."""
    block = block_at(book, client, day, catalogue)
    return client_pace(block.base, sessions_of(book, client))


def take_pace(book: Book, client: Client, pace: ClientPace | NotEnough, where: str) -> Client:
    """The client with a new version of the brief that has this pace, which is kept; raises UsageFault for none."""
    if isinstance(pace, NotEnough):
        raise UsageFault(Fault(where, "too little is logged to tell a pace", "log more sessions with times"))
    clock = pace.clock.model_dump(exclude_none=True)
    with book.writing():
        keep_pace(book, client, pace_document(pace))
        return keep_brief(book, client, {**brief_of(book, client), "clock": clock}, "the pace from the log")
