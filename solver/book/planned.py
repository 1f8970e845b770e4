"""Weeks and blocks as planned, kept as the documents that they are."""

from __future__ import annotations

import json
from collections.abc import Mapping
from dataclasses import dataclass, field
from datetime import date
from functools import cached_property
from typing import Any

from setwright.solver.book.clients import Client
from setwright.solver.book.journal import left_out, note_row, that_hold
from setwright.solver.book.opened import Book


@dataclass(frozen=True)
class KeptWeek:
    """A week that was kept: the Monday it starts on, why it was kept, and its document."""

    id: int
    starts: date
    why: str
    written: str = field(repr=False)
    """Its document as it was written."""

    @cached_property
    def document(self) -> Mapping[str, Any]:
        """Its document, read when it is first asked for: most of what looks at weeks needs their days alone."""
        found: Mapping[str, Any] = json.loads(self.written)
        return found


@dataclass(frozen=True)
class KeptBlock:
    """A block that was kept: its first and last day, and its document."""

    id: int
    starts: date
    ends: date
    written: str = field(repr=False)
    """Its document as it was written."""

    @cached_property
    def document(self) -> Mapping[str, Any]:
        """Its document, read when it is first asked for."""
        found: Mapping[str, Any] = json.loads(self.written)
        return found


def keep_week(book: Book, client: Client, starts: date, document: Mapping[str, Any], why: str = "") -> None:
    """Keep a week of a client; the newest of a Monday holds."""
    fields = "client, starts, made, why, document"
    with book.writing() as connection:
        values = (client.id, starts.isoformat(), book.now, why, _written(document))
        written = connection.execute(f"INSERT INTO week ({fields}) VALUES (?, ?, ?, ?, ?)", values)
        note_row(book, client.id, "week", written.lastrowid or 0)


def kept_weeks(book: Book, client: Client, first: date = date.min, last: date = date.max) -> tuple[KeptWeek, ...]:
    """Every week that was kept, those taken back left out, in the order in which they were.

    Only those that start from one day to another, both included, where these are named.
    """
    out = left_out("week")
    query = f"SELECT * FROM week WHERE client = ? AND starts BETWEEN ? AND ? AND id NOT IN ({out}) ORDER BY id"
    rows = book.rows(query, client.id, first.isoformat(), last.isoformat())
    return tuple(week_of_row(row) for row in rows)


def week_of_row(row: Any) -> KeptWeek:
    """A week as its row has it; an empty document where that was not asked for."""
    return KeptWeek(row["id"], date.fromisoformat(row["starts"]), row["why"], row["document"] or "{}")


def week_starting(book: Book, client: Client, starts: date) -> KeptWeek | None:
    """The newest kept week of a Monday; None where there is none."""
    return next(reversed(kept_weeks(book, client, starts, starts)), None)


def keep_block(book: Book, client: Client, starts: date, ends: date, document: Mapping[str, Any]) -> None:
    """Keep a block; it says which it replaces where it begins on the same day as one before it."""
    with book.writing() as connection:
        replaces = max((block.id for block in blocks(book, client) if block.starts == starts), default=None)
        values = (client.id, starts.isoformat(), ends.isoformat(), book.now, _written(document), replaces)
        fields = "client, starts, ends, made, document, replaces"
        written = connection.execute(f"INSERT INTO block ({fields}) VALUES (?, ?, ?, ?, ?, ?)", values)
        note_row(book, client.id, "block", written.lastrowid or 0)


def blocks(book: Book, client: Client) -> tuple[KeptBlock, ...]:
    """The blocks that hold, those replaced or taken back left out, in the order of their first days."""
    query = f"SELECT * FROM block WHERE client = ? AND {that_hold('block')} ORDER BY starts, id"
    return tuple(block_of_row(row) for row in book.rows(query, client.id))


def block_on(book: Book, client: Client, day: date) -> KeptBlock | None:
    """The newest block that a day stands in, else the newest of all; None where there is none."""
    found = sorted(blocks(book, client), key=lambda block: block.id)
    inside = [block for block in found if block.starts <= day <= block.ends]
    return next(reversed(inside or found), None)


def block_of_row(row: Any) -> KeptBlock:
    """A block as its row has it."""
    starts, ends = date.fromisoformat(row["starts"]), date.fromisoformat(row["ends"])
    return KeptBlock(row["id"], starts, ends, row["document"])


def _written(document: Mapping[str, Any]) -> str:
    """A document as it is kept."""
    return json.dumps(document, sort_keys=True, ensure_ascii=False, allow_nan=False)
