"""A week that was made elsewhere, pasted or uploaded: its minutes, its sets, what it breaks, what it gives up."""

from __future__ import annotations

from typing import Any, Final

from starlette.datastructures import UploadFile
from starlette.requests import Request
from starlette.responses import Response

from setwright.catalogue.faults import Fault, UsageFault
from setwright.solver.auditing import audit
from setwright.solver.book.clients import brief_of, client_of
from setwright.solver.brief.parsed_brief import ParsedBrief, parse_brief
from setwright.solver.desk.desk import desk_of
from setwright.solver.desk.forms import Fields
from setwright.solver.desk.pages import page
from setwright.solver.foreign.foreign_week import read_any
from setwright.solver.rulebook import RULES, resolve
from setwright.solver.sheets.common.json_values import MOST_BYTES
from setwright.solver.sheets.screen.audit import audit_document

EMPTY: Final[dict[str, Any]] = {"schema": "setwright.audit/1", "notes": [], "days": []}


def show(request: Request) -> Response:
    """The form that takes a week."""
    return page(request, "weeks/check.html", EMPTY, code=_client(request)[0], pasted="")


def check(request: Request, fields: Fields) -> Response:
    """The audit of the week that was sent; raises UsageFault with every fault of its file."""
    code, parsed = _client(request)
    pasted = fields.get("week", "")
    data = _uploaded(request) or pasted.encode()
    if not data.strip():
        raise UsageFault(Fault("week", "is empty", "paste its lines, or choose its file"))
    asked = parsed if fields.get("brief") else None
    found = read_any(data, "week", desk_of(request).catalogue, asked, bool(fields.get("near")))
    audited = audit(resolve(found.parsed.brief, desk_of(request).catalogue), found.week)
    document = {**audit_document(audited), "notes": list(found.notes)}
    return page(request, "weeks/check.html", document, code=code, pasted=pasted)


def _client(request: Request) -> tuple[str, ParsedBrief]:
    """The code and the newest brief of the client of an address; raises UsageFault."""
    desk = desk_of(request)
    with desk.book() as book:
        client = client_of(book, request.path_params["code"])
        raw = brief_of(book, client)
    return client.code, parse_brief(raw, desk.catalogue, f"@{client.code}", tuple(RULES))


def _uploaded(request: Request) -> bytes:
    """What was sent as a file, one byte more than may be read at most; empty where none was."""
    file = request.state.form.get("file")
    return file.file.read(MOST_BYTES + 1) if isinstance(file, UploadFile) else b""
