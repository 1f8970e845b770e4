"""What is written down of a client's sessions: typed, from a file, with the words for what became of them."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from datetime import date

from setwright.catalogue.entries import Catalogue
from setwright.catalogue.faults import Fault, UsageFault
from setwright.solver.book.clients import Client
from setwright.solver.book.opened import Book
from setwright.solver.book.sessions import Kept, log_sessions, session_at
from setwright.solver.foreign.log.log_file import LogFile, read_log
from setwright.solver.log.values import LoggedSession
from setwright.solver.sheets.common.words import counted


def write_on(book: Book, client: Client, session: LoggedSession, anew: bool) -> Kept:
    """Write a session down: after the sets that stand at its place, or anew in their place."""
    with book.writing():
        standing = None if anew else session_at(book, client, session)
        whole = session if standing is None else standing.followed_by(session)
        return log_sessions(book, client, [whole], replace=anew or standing is not None)


@dataclass(frozen=True)
class ReadingOfALog:
    """How a client's file is to be read."""

    columns: Mapping[str, str] | None = None
    """Field -> heading, where it is not known by itself."""
    accept_near: bool = False


def read_for(client: Client, data: bytes, where: str, catalogue: Catalogue, how: ReadingOfALog, today: date) -> LogFile:
    """The sessions of a client's file; raises UsageFault with every fault, and where its loads are in another unit."""
    found = read_log(data, where, catalogue, client.unit, how.columns, how.accept_near, today)
    if other := next((session.unit for session in found.sessions if session.unit != client.unit), None):
        said = f"its loads are in {other}, those of {client.code} in {client.unit}: kg and lb are never mixed"
        raise UsageFault(Fault(where, said, f"write the loads in {client.unit}"))
    return found


def kept_words(code: str, kept: Kept) -> str:
    """How many sessions were written down, were there already, and took the place of others."""
    more = [f"{kept.there_already} there already"] if kept.there_already else []
    more += [f"{kept.replaced} in the place of what stood there, which is kept"] if kept.replaced else []
    count = counted(kept.written, "session")
    return f"written down for @{code}: {', '.join((count, *more))}"


def between(
    sessions: Sequence[LoggedSession], first: date | None = None, last: date | None = None
) -> list[LoggedSession]:
    """The sessions from one day to another, both included; an end that is None leaves it open."""
    return [s for s in sessions if (first is None or s.on >= first) and (last is None or s.on <= last)]
