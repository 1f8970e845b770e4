"""What in a client's log looks like a slip, and what is unlike the weeks that were planned."""

from __future__ import annotations

from datetime import date

from setwright.catalogue.entries import Catalogue
from setwright.solver.book.clients import Client
from setwright.solver.book.opened import Book
from setwright.solver.book.sessions import sessions_of
from setwright.solver.records.kept_blocks import audit_on, blocks_of
from setwright.solver.records.written_log import between
from setwright.solver.uses.log.log_checks import LogFinding, check_log


def checked_log(book: Book, client: Client, catalogue: Catalogue, first: date | None = None) -> tuple[LogFinding, ...]:
    """What a coach may want to look at, in the order of the dates; sessions before `first` are left out."""
    kept = tuple(blocks_of(book, client, catalogue).values())
    return check_log(between(sessions_of(book, client), first), lambda day: audit_on(kept, day))
