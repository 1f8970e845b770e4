"""How long a client takes, as it was told from the log; the newest holds."""

from __future__ import annotations

import json
from collections.abc import Mapping
from typing import Any

from setwright.solver.book.clients import Client
from setwright.solver.book.opened import Book


def keep_pace(book: Book, client: Client, document: Mapping[str, Any]) -> None:
    """Keep a pace."""
    with book.writing() as connection:
        values = (client.id, book.now, json.dumps(document, sort_keys=True))
        connection.execute("INSERT INTO pace (client, made, document) VALUES (?, ?, ?)", values)


def paces(book: Book, client: Client) -> tuple[Mapping[str, Any], ...]:
    """Every pace of a client, the oldest first."""
    rows = book.rows("SELECT document FROM pace WHERE client = ? ORDER BY id", client.id)
    return tuple(json.loads(row["document"]) for row in rows)
