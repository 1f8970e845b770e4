"""How long a client takes, as it was told from the log; the newest holds."""

from __future__ import annotations

import json
from collections.abc import Mapping
from typing import Any

from setwright.solver.book.clients import Client
from setwright.solver.book.moments import moment
from setwright.solver.book.opened import Book


def keep_pace(book: Book, client: Client, document: Mapping[str, Any]) -> None:
    """Keep a pace."""
    values = (client.id, moment(), json.dumps(document, sort_keys=True))
    with book.writing() as connection:
        connection.execute("INSERT INTO pace (client, made, document) VALUES (?, ?, ?)", values)


def pace_of(book: Book, client: Client) -> Mapping[str, Any] | None:
    """The newest pace of a client; None where none was kept."""
    rows = book.rows("SELECT document FROM pace WHERE client = ? ORDER BY id DESC LIMIT 1", client.id)
    found: Mapping[str, Any] | None = json.loads(rows[0]["document"]) if rows else None
    return found
