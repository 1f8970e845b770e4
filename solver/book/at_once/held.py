"""What the book holds of one client or of all: each subject is read once, whoever asks for it afterwards."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date
from typing import Any, Final

from setwright.solver.book.clients import Client, client_of_rows
from setwright.solver.book.journal import left_out, that_hold
from setwright.solver.book.opened import Book
from setwright.solver.book.planned import KeptBlock, KeptWeek, block_of_row, week_of_row
from setwright.solver.book.session_rows import IN_TIME, session_of, set_of
from setwright.solver.log.values import LoggedSession


@dataclass(frozen=True)
class Held:
    """What holds of a client: what was replaced or taken back is left out."""

    client: Client
    weeks: tuple[KeptWeek, ...]
    """In the order in which they were kept; their documents are empty outside the days asked for."""
    blocks: tuple[KeptBlock, ...]
    """In the order of their first days."""
    sessions: tuple[LoggedSession, ...]
    """In the order of their dates."""
    changes: tuple[tuple[str, str], ...]
    """(moment, what was changed), the oldest first."""


_OF: Final = "(? IS NULL OR {table}.client = ?)"
_CLIENTS: Final = f"""
    SELECT client.*, brief.document, max(brief.version) AS version FROM client JOIN brief ON brief.client = client.id
    WHERE {_OF.format(table="brief")} AND brief.id NOT IN ({left_out("brief")}) GROUP BY client.id ORDER BY client.code
"""
_WEEKS: Final = f"""
    SELECT id, client, starts, why, CASE WHEN starts BETWEEN ? AND ? THEN document END AS document FROM week
    WHERE {_OF.format(table="week")} AND id NOT IN ({left_out("week")}) ORDER BY id
"""
_BLOCKS: Final = f"""
    SELECT * FROM block WHERE {_OF.format(table="block")} AND {that_hold("block")} ORDER BY starts, id
"""
_SESSIONS: Final = f"""
    SELECT * FROM session WHERE {_OF.format(table="session")} AND {that_hold("session")} ORDER BY {IN_TIME}
"""
_SETS: Final = f"""
    SELECT set_done.* FROM set_done JOIN session ON session.id = set_done.session
    WHERE {_OF.format(table="session")} ORDER BY session, place
"""
_CHANGES: Final = f"SELECT * FROM change WHERE {_OF.format(table='change')} ORDER BY id"


def held(book: Book, near: tuple[date, date], client: Client | None = None) -> tuple[Held, ...]:
    """What holds of every client, in the order of their codes, or of one.

    The documents of kept weeks are read where they begin on the days from the first of `near` to the last.
    """
    one = None if client is None else client.id
    of = (one, one)
    clients = [client_of_rows(row, row) for row in book.rows(_CLIENTS, *of)]
    weeks = _by_client(book.rows(_WEEKS, *(day.isoformat() for day in near), *of))
    blocks = _by_client(book.rows(_BLOCKS, *of))
    sessions = _by_client(book.rows(_SESSIONS, *of))
    changes = _by_client(book.rows(_CHANGES, *of))
    sets: dict[int, list[Any]] = defaultdict(list)
    for row in book.rows(_SETS, *of):
        sets[row["session"]].append(set_of(row))
    return tuple(
        Held(
            client=found,
            weeks=tuple(week_of_row(row) for row in weeks[found.id]),
            blocks=tuple(block_of_row(row) for row in blocks[found.id]),
            sessions=tuple(session_of(row, sets[row["id"]]) for row in sessions[found.id]),
            changes=tuple((row["made"], row["said"]) for row in changes[found.id]),
        )
        for found in clients
    )


def _by_client(rows: Sequence[Any]) -> dict[int, list[Any]]:
    found: dict[int, list[Any]] = defaultdict(list)
    for row in rows:
        found[row["client"]].append(row)
    return found
