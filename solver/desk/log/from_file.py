"""A log's file read into the book: all of it or nothing, what was not understood shown."""

from __future__ import annotations

from typing import Any, Final

from starlette.datastructures import UploadFile
from starlette.requests import Request
from starlette.responses import Response

from setwright.catalogue.faults import Fault, UsageFault
from setwright.solver.book.clients import client_of
from setwright.solver.book.sessions import log_sessions, unread_of
from setwright.solver.desk.clock import today
from setwright.solver.desk.desk import desk_of
from setwright.solver.desk.forms import Fields
from setwright.solver.desk.log.sessions import session_words
from setwright.solver.desk.pages import page
from setwright.solver.foreign.log.tables.log_columns import FIELDS
from setwright.solver.records.logs.written_log import ReadingOfALog, kept_words, read_for
from setwright.solver.sheets.document.progress.log_model import log_document

MAPPED: Final = 6
"""Columns that the form can name."""
SHOWN: Final = 10
"""So many of the sessions that were read are shown as tables."""


def show_form(request: Request) -> Response:
    """The form, and what earlier imports did not understand."""
    with desk_of(request).book() as book:
        client = client_of(book, request.path_params["code"])
        unread = unread_of(book, client)
    more: dict[str, Any] = {"code": client.code, "columns": FIELDS, "mapped": range(MAPPED), "unread": unread}
    return page(request, "log/import.html", log_document([], unread), **more)


def read_file(request: Request, fields: Fields) -> Response:
    """Read a file, and write its sessions down where that is asked for; raises UsageFault with every row's fault."""
    desk, upload = desk_of(request), request.state.form.get("file")
    if not isinstance(upload, UploadFile) or not upload.filename:
        raise UsageFault(Fault("file", "none was chosen", "choose a log's file"))
    data, where = upload.file.read(), upload.filename
    how = ReadingOfALog(_columns(fields), "near" in fields)
    with desk.book() as book:
        client = client_of(book, request.path_params["code"])
        found = read_for(client, data, where, desk.catalogue, how, today())
        kept = None
        if fields.get("act") == "write":
            kept = log_sessions(book, client, found.sessions, found.unread, data, replace="anew" in fields)
    said = None if kept is None else kept_words(client.code, kept)
    document: dict[str, Any] = {**log_document(found.sessions, found.unread), "written": kept is not None}
    more: dict[str, Any] = {
        "code": client.code,
        "said": said,
        "notes": found.notes,
        "sessions": [session_words(session, desk.catalogue) for session in found.sessions[:SHOWN]],
        "count": len(found.sessions),
        "unread": found.unread,
    }
    fragment = request.headers.get("hx-request") is not None
    return page(request, "log/_read.html" if fragment else "log/read.html", document, **more)


def _columns(fields: Fields) -> dict[str, str] | None:
    """Field -> heading, of the rows that name both; raises UsageFault for a field that is not known or named twice."""
    found: dict[str, str] = {}
    for place in range(MAPPED):
        name, heading = fields.get(f"field-{place}", ""), fields.get(f"heading-{place}", "").strip()
        if not name and not heading:
            continue
        if name not in FIELDS or not heading:
            raise UsageFault(
                Fault("columns", f"got {name or 'no field'!r} for {heading!r}", "name a field and a heading")
            )
        if name in found or heading in found.values():
            raise UsageFault(Fault("columns", f"{name} or {heading!r} is named a second time", "name it once"))
        found[name] = heading
    return found or None
