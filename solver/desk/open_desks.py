"""The desks that are open on this machine, so that a second one on the same book opens the first."""

from __future__ import annotations

import hashlib
import http.client
import json
import os
from collections.abc import Iterator
from contextlib import contextmanager, suppress
from pathlib import Path
from typing import Final
from urllib.parse import urlsplit

PATIENCE: Final = 2.0
"""Seconds that an open desk is given to answer."""


def address_of_open_desk(book: Path) -> str | None:
    """The address, with its token, of the desk that is open on a book; None where none answers."""
    address = _noted_address(_note_of(book))
    return address if address and _answers(address) else None


@contextmanager
def noted(book: Path, address: str) -> Iterator[None]:
    """The desk on a book noted as open, for its owner's eyes alone, as long as this lasts."""
    note = _note_of(book)
    note.parent.mkdir(mode=0o700, parents=True, exist_ok=True)
    with suppress(OSError):
        note.unlink()
    with os.fdopen(os.open(note, os.O_CREAT | os.O_EXCL | os.O_WRONLY, 0o600), "w") as file:
        json.dump({"address": address}, file)
    try:
        yield
    finally:
        if _noted_address(note) == address:
            with suppress(OSError):
                note.unlink()


def _noted_address(note: Path) -> str | None:
    """The address in a note; None where there is none, or what a killed desk left is no note."""
    try:
        said = json.loads(note.read_text())
    except (OSError, ValueError):
        return None
    address = said.get("address") if isinstance(said, dict) else None
    return address if isinstance(address, str) else None


def _note_of(book: Path) -> Path:
    """Where a desk on a book is noted; the name does not tell the book's."""
    from platformdirs import user_state_path

    return user_state_path("setwright", appauthor=False) / f"{hashlib.sha256(str(book).encode()).hexdigest()[:20]}.json"


def _answers(address: str) -> bool:
    """Whether the desk of an address lets in by its token."""
    parts = urlsplit(address)
    if parts.scheme != "http" or not parts.hostname:
        return False
    connection = http.client.HTTPConnection(parts.hostname, parts.port, timeout=PATIENCE)
    try:
        connection.request("GET", f"{parts.path}?{parts.query}")
        return connection.getresponse().status == http.client.SEE_OTHER
    except (OSError, http.client.HTTPException):
        return False
    finally:
        connection.close()
