"""A backup of the whole book, as a download."""

from __future__ import annotations

import tempfile
from pathlib import Path

from starlette.requests import Request
from starlette.responses import Response

from setwright.solver.book.care import backup
from setwright.solver.desk.clock import today
from setwright.solver.desk.desk import desk_of


def download(request: Request) -> Response:
    """A whole copy of the book, made while others may write to it."""
    with tempfile.TemporaryDirectory() as folder, desk_of(request).book() as book:
        copy = Path(folder) / "book.db"
        backup(book, copy)
        content = copy.read_bytes()
    headers = {"Content-Disposition": f'attachment; filename="setwright-book-{today()}.db"'}
    return Response(content, media_type="application/vnd.sqlite3", headers=headers)
