"""A search for a client's week, and the act that keeps what it found."""

from __future__ import annotations

from datetime import date

from starlette.requests import Request
from starlette.responses import Response

from setwright.catalogue.faults import Fault, UsageFault
from setwright.solver.book.clients import brief_of, client_of
from setwright.solver.book.planned import keep_week
from setwright.solver.desk.desk import desk_of
from setwright.solver.desk.forms import Fields
from setwright.solver.desk.pages import go_to
from setwright.solver.desk.weeks.dates import monday_said
from setwright.solver.search.limits import DEFAULT, SEARCHES
from setwright.solver.sheets.document.week_model import SCHEMA


def find(request: Request, fields: Fields) -> Response:
    """Begin the search for the week of a client's newest brief, and go to its page."""
    desk = desk_of(request)
    with desk.book() as book:
        client = client_of(book, request.path_params["code"])
        raw = brief_of(book, client)
    effort = fields.get("search", DEFAULT)
    if effort not in SEARCHES:
        raise UsageFault(Fault("search", f"got {effort!r}, expected one of {', '.join(SEARCHES)}"))
    search = desk.crew.ask(client.code, desk.task("week", brief=raw, search=effort))
    return go_to(request, f"/searches/{search.id}")


def keep(request: Request, fields: Fields) -> Response:
    """Keep the week that a search found, from a Monday on; raises UsageFault where it found none."""
    desk = desk_of(request)
    search = desk.crew.search(fields.get("found", ""))
    document = None if search is None else search.told.document
    if document is None or document.get("schema") != SCHEMA:
        raise UsageFault(Fault("week", "there is none to keep", "find one first"))
    monday: date = monday_said(fields.get("starts", ""))
    with desk.book() as book:
        client = client_of(book, request.path_params["code"])
        keep_week(book, client, monday, document, "found on the desk")
    return go_to(request, f"/clients/{client.code}/weeks/{monday}")
