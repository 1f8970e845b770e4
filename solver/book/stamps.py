"""How a client stood when a page was shown, as one word; and what was done since."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Final
from zlib import crc32

from setwright.catalogue.faults import Fault, UsageFault
from setwright.solver.book.clients import Client
from setwright.solver.book.opened import Book
from setwright.solver.book.undone import journal_of

EMPTY: Final = "0.0.0.0.0"
"""A stamp that has seen nothing."""
TABLES: Final = ("act", "change", "pace", "import")
"""Tables to which each write on a client adds a row, but for a client's own row."""


def version_stamp(book: Book, client: Client) -> str:
    """A word that is another one after any write on the client."""
    newest = [book.rows(f"SELECT coalesce(max(id), 0) FROM {t} WHERE client = ?", client.id)[0][0] for t in TABLES]
    own = f"{client.id} {client.code} {client.added} {client.name} {client.resting_since}"
    return ".".join([*map(str, newest), f"{crc32(own.encode()):08x}"])


@dataclass(frozen=True)
class News:
    """One thing that was done to a client: when, by which way, and in plain words."""

    moment: str
    through: str
    said: str


def news_since(book: Book, client: Client, stamp: str) -> tuple[News, ...]:
    """What was done after a stamp, the oldest first: acts, acts taken back or done again, notes of other changes."""
    seen_act, seen_note = _parts(stamp)
    acts = [act for act in journal_of(book, client).all if act.id > seen_act]
    told = {(act.moment, act.noted) for act in acts}
    notes = book.rows("SELECT made, said FROM change WHERE client = ? AND id > ? ORDER BY id", client.id, seen_note)
    found = [News(act.moment, act.through, act.said) for act in acts]
    found += [News(row["made"], "", row["said"]) for row in notes if (row["made"], row["said"]) not in told]
    return tuple(sorted(found, key=lambda news: news.moment))


def _parts(stamp: str) -> tuple[int, int]:
    """The newest act and the newest note that a stamp has seen; raises UsageFault."""
    parts = stamp.split(".")
    if len(parts) != len(TABLES) + 1 or not all(part.isascii() and part.isdecimal() for part in parts[:2]):
        raise UsageFault(Fault("stamp", f"got {stamp!r}, expected the one of the page", "show the page anew"))
    return int(parts[0]), int(parts[1])
