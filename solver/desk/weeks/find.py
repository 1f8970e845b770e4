"""A search for a client's week, and the act that keeps what it found."""

from __future__ import annotations

from collections.abc import Mapping
from datetime import date
from types import MappingProxyType
from typing import Any, Final

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
from setwright.solver.sheets.html.beside import COMPARE, CURVE

WHY: Final[Mapping[str, str]] = MappingProxyType(
    {
        SCHEMA: "found on the desk",
        COMPARE: "chosen among goals on the desk",
        CURVE: "chosen by what time buys on the desk",
    }
)
"""Schema of what a search found -> why a week of it was kept."""


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
    whole = None if search is None else search.told.document
    document = part_at(whole, fields.get("part", ""))
    if document is None:
        raise UsageFault(Fault("week", "there is none to keep", "find one first"))
    why = WHY.get(str(whole and whole.get("schema")), WHY[SCHEMA])
    monday: date = monday_said(fields.get("starts", ""))
    with desk.book() as book:
        client = client_of(book, request.path_params["code"])
        keep_week(book, client, monday, document, why)
    return go_to(request, f"/clients/{client.code}/weeks/{monday}")


def part_at(document: object, part: str) -> Mapping[str, Any] | None:
    """The week that stands in a document at a part such as `cases/1/week`, the document itself where none is named.

    None where there is none.
    """
    found = document
    for step in part.split("/") if part else ():
        if isinstance(found, Mapping):
            found = found.get(step)
        elif isinstance(found, list | tuple) and step.isdecimal() and int(step) < len(found):
            found = found[int(step)]
        else:
            return None
    return found if isinstance(found, Mapping) and found.get("schema") == SCHEMA else None
