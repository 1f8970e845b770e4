"""A client's sessions as they were done, the newest first, and sets added by typing."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace
from typing import Any, Final

from starlette.requests import Request
from starlette.responses import Response

from setwright.catalogue.entries import Catalogue
from setwright.catalogue.fault_collector import FaultCollector
from setwright.solver.book.clients import client_of
from setwright.solver.book.sessions import sessions_of, unread_of
from setwright.solver.desk.clock import today
from setwright.solver.desk.desk import desk_of
from setwright.solver.desk.forms import Fields
from setwright.solver.desk.log.drafts import identity
from setwright.solver.desk.log.fields import of_a_session
from setwright.solver.desk.pages import go_to, page
from setwright.solver.desk.weeks.dates import date_said
from setwright.solver.foreign.log.typed_session import typed_session
from setwright.solver.log.values import LoggedSession
from setwright.solver.records.logs.written_log import between, write_on
from setwright.solver.sheets.document.progress.log_model import log_document
from setwright.solver.sheets.screen.over_time.log import lift_rows, session_facts, session_title

SHOWN: Final = 20
"""So many of the newest sessions are shown at once."""


def show(request: Request) -> Response:
    """The sessions that hold, between two days where the address names them; as JSON all of them, oldest first."""
    desk, query = desk_of(request), request.query_params
    first, last = (date_said(query[end], end) if query.get(end) else None for end in ("from", "to"))
    with desk.book() as book:
        client = client_of(book, request.path_params["code"])
        found, unread = between(sessions_of(book, client), first, last), unread_of(book, client)
    newest = list(reversed(found))
    count = len(newest) if "all" in query else SHOWN
    more: dict[str, Any] = {
        "code": client.code,
        "of": identity(client),
        "sessions": [session_words(session, desk.catalogue) for session in newest[:count]],
        "left": max(0, len(newest) - count),
        "unit": client.unit,
        "first": first,
        "last": last,
        "said": query.get("said", ""),
    }
    return page(request, "log/sessions.html", log_document(found, unread), **more)


def add(request: Request, fields: Fields) -> Response:
    """Write down typed sets, a lift a line: after those that stand there, or anew; raises UsageFault."""
    desk, day = desk_of(request), today()
    faults = FaultCollector()
    on = faults.result_of(lambda: date_said(fields["on"], "day") if fields.get("on") else day)
    of = faults.result_of(lambda: of_a_session(fields, on or day))
    texts = [line.strip() for line in fields.get("sets", "").splitlines() if line.strip()]
    with desk.book() as book:
        client = client_of(book, request.path_params["code"])
        found = faults.result_of(lambda: typed_session(texts or [""], on or day, desk.catalogue, client.unit, day))
        faults.raise_all()
        assert found is not None and of is not None
        write_on(book, client, replace(found.sessions[0], **of), "anew" in fields)
    return go_to(request, f"/clients/{client.code}/log")


def session_words(session: LoggedSession, catalogue: Catalogue) -> Mapping[str, Any]:
    """A session in words, and the address by which it is written anew."""
    number = "" if session.session is None else f"&session={session.session}"
    started = "" if session.session or session.started is None else f"&started={session.started:%H:%M}"
    return {
        "title": session_title(session),
        "on": session.on,
        "number": session.session,
        "facts": session_facts(session),
        "lifts": lift_rows(session, catalogue),
        "note": session.note,
        "anew": f"{session.on}?anew=1{number}{started}",
    }
