"""A session's digest: the same for the same content, so that a session given twice is kept once."""

from __future__ import annotations

import hashlib
import json
from datetime import date

from setwright.solver.log.values import LoggedSession


def digest_of(session: LoggedSession) -> str:
    """The SHA-256 of all that a session says, as 64 hexadecimal digits; 80 and 80.0 are the same load."""
    content = [
        _said(session.on),
        session.unit,
        session.week,
        session.session,
        _said(session.started),
        _said(session.ended),
        _number(session.minutes),
        session.how_hard,
        session.note,
        [
            [done.exercise, done.number, done.reps, _number(done.load), done.rir, done.side, _said(done.ended)]
            for done in session.sets
        ],
    ]
    text = json.dumps(content, ensure_ascii=True, separators=(",", ":"), allow_nan=False)
    return hashlib.sha256(text.encode("ascii")).hexdigest()


def _said(when: date | None) -> str | None:
    return None if when is None else when.isoformat()


def _number(value: float | None) -> float | None:
    return None if value is None else float(value) + 0.0
