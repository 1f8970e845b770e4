"""What the book holds of one client, as files: for the client's right to it, and to move it elsewhere."""

from __future__ import annotations

import csv
import io
import json
from typing import Any, Final

from setwright.solver.book.clients import Client, changes, health_versions
from setwright.solver.book.opened import Book
from setwright.solver.book.paces import paces
from setwright.solver.book.planned import blocks, kept_weeks
from setwright.solver.book.sessions import sessions_of, unread_of
from setwright.solver.book.undone import journal_of

SCHEMA: Final = "setwright.client/1"
COLUMNS: Final = ("date", "week", "session", "exercise", "set", "load", "unit", "reps", "rir", "side", "ended")


def exported(book: Book, client: Client) -> dict[str, bytes]:
    """File name -> content: the client's plans as JSON, every set as CSV, health notes in a file of their own."""
    files = {"client.json": _json(_document(book, client)), "sets.csv": _sets(book, client)}
    if health := health_versions(book, client):
        files["health.json"] = _json(health)
    return files


def _document(book: Book, client: Client) -> dict[str, Any]:
    """Briefs in every version, weeks, blocks, paces, acts, notes of changes, remarks of sessions; no health notes."""
    versions = book.rows("SELECT version, made, document FROM brief WHERE client = ? ORDER BY version", client.id)
    return {
        "schema": SCHEMA,
        "code": client.code,
        "name": client.name,
        "added": client.added,
        "resting_since": client.resting_since and client.resting_since.isoformat(),
        "briefs": [{**dict(row), "document": json.loads(row["document"])} for row in versions],
        "weeks": [{"starts": w.starts.isoformat(), "why": w.why, "week": w.document} for w in kept_weeks(book, client)],
        "blocks": [b.document for b in blocks(book, client)],
        "paces": list(paces(book, client)),
        "sessions": [
            {
                "date": s.on.isoformat(),
                "week": s.week,
                "session": s.session,
                "started": s.started and s.started.isoformat(),
                "ended": s.ended and s.ended.isoformat(),
                "minutes": s.minutes,
                "how_hard": s.how_hard,
                "note": s.note,
            }
            for s in sessions_of(book, client)
        ],
        "unread": [{"place": u.place, "text": u.text, "why": u.why} for u in unread_of(book, client)],
        "acts": [{"made": a.moment, "through": a.through, "said": a.said} for a in journal_of(book, client).all],
        "changes": [{"made": made, "said": said} for made, said in changes(book, client)],
    }


def _sets(book: Book, client: Client) -> bytes:
    """Every set that holds, one a row, in the order in which they were done."""
    text = io.StringIO(newline="")
    table = csv.writer(text, lineterminator="\r\n")
    table.writerow(COLUMNS)
    for session in sessions_of(book, client):
        for s in session.sets:
            ended = s.ended and s.ended.isoformat()
            place = (session.on.isoformat(), session.week, session.session)
            table.writerow((*place, s.exercise, s.number, s.load, session.unit, s.reps, s.rir, s.side, ended))
    return text.getvalue().encode()


def _json(value: Any) -> bytes:
    return (json.dumps(value, indent=2, sort_keys=True, ensure_ascii=False) + "\n").encode()
