"""A search for a client's week, and the acts on what it found: kept, or a concession made and searched again."""

from __future__ import annotations

from collections.abc import Mapping
from datetime import date
from types import MappingProxyType
from typing import Any, Final

from starlette.requests import Request
from starlette.responses import Response

from setwright.catalogue.faults import Fault, UsageFault
from setwright.solver.book.clients import Client, brief_of, client_of, health_of, keep_brief
from setwright.solver.book.opened import Book
from setwright.solver.book.planned import keep_week
from setwright.solver.desk.desk import Desk, desk_of
from setwright.solver.desk.field_values import effort_said
from setwright.solver.desk.forms import Fields
from setwright.solver.desk.pages import go_to
from setwright.solver.desk.searches.found import client_of_search, ended_search, is_theirs
from setwright.solver.desk.weeks.dates import monday_said
from setwright.solver.records.week_at_hand import read_kept_week
from setwright.solver.sheets.document.changed_week import NO_SEARCH, changed_week_document
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
    effort = effort_said(fields)
    with desk.book() as book:
        client = client_of(book, request.path_params["code"])
        return _search(request, desk, book, client, effort)


def keep(request: Request, fields: Fields) -> Response:
    """Keep the week that a search found, from a Monday on; raises UsageFault where it found none.

    `part` names a week inside what was found, `rank` one of the alternatives beside it.
    """
    desk = desk_of(request)
    search = ended_search(desk, fields)
    whole = search.told.document or {}
    document = _chosen(whole, fields.get("part", ""), fields.get("rank", ""))
    why = search.task.arguments.get("why") or WHY.get(str(whole.get("schema")), WHY[SCHEMA])
    monday: date = monday_said(fields.get("starts", ""))
    with desk.book() as book:
        client = client_of_search(book, request, search)
        _refuse_another_s(document, client)
        keep_week(book, client, monday, _whole(book, client, document, desk), why)
    return go_to(request, f"/clients/{client.code}/weeks/{monday}")


def concede(request: Request, fields: Fields) -> Response:
    """Take up one of the changes that free a clash: a new version of the brief, and the search begun again."""
    desk = desk_of(request)
    effort = effort_said(fields)
    search = ended_search(desk, fields)
    concessions = {str(one["rank"]): one for one in (search.told.document or {}).get("concessions", ())}
    chosen = concessions.get(fields.get("rank", ""))
    if chosen is None:
        raise UsageFault(Fault("rank", f"got {fields.get('rank', '')!r}, expected one of {', '.join(concessions)}"))
    with desk.book() as book:
        client = client_of_search(book, request, search)
        if brief_of(book, client) != search.task.arguments["brief"]:
            said = "the brief was changed since this search began"
            raise UsageFault(Fault("brief", said, "search again: the changes on offer are those of the old brief"))
        raw = {**chosen["brief"], "client": {**chosen["brief"]["client"], **health_of(book, client)}}
        client = keep_brief(book, client, raw, f"so that a week is possible: {chosen['words']}")
        return _search(request, desk, book, client, effort)


def _search(request: Request, desk: Desk, book: Book, client: Client, effort: str) -> Response:
    """The search begun, and the way to its page."""
    search = desk.crew.ask(client.code, desk.task("week", brief=brief_of(book, client), search=effort))
    return go_to(request, f"/searches/{search.id}")


def _refuse_another_s(document: Mapping[str, Any], client: Client) -> None:
    """Raise UsageFault for a week of another client's brief, which stood beside this one's."""
    if not is_theirs(document, client.code):
        said = f"is of another client's brief, not of @{client.code}'s"
        raise UsageFault(Fault("week", said, "find a week on that client's own page"))


def _chosen(document: Mapping[str, Any], part: str, rank: str) -> Mapping[str, Any]:
    """The week at a part of what was found, or the alternative of a rank in its place; raises UsageFault."""
    if not rank:
        found = part_at(document, part)
        if found is None:
            raise UsageFault(Fault("week", "there is none to keep", "find one first"))
        return found
    other = next((one for one in document.get("alternatives", ()) if str(one["rank"]) == rank), None)
    if other is None:
        raise UsageFault(Fault("rank", f"got {rank!r}, expected the rank of an alternative"))
    own = {key: value for key, value in document.items() if key != "alternatives"}
    return {**own, "days": other["days"], "made_by": {**document["made_by"], "limits": NO_SEARCH}}


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


def _whole(book: Book, client: Client, document: Mapping[str, Any], desk: Desk) -> Mapping[str, Any]:
    """A week's document as it is kept: one of no search, told in haste or chosen beside the first, is made anew."""
    if document["made_by"]["limits"] != NO_SEARCH:
        return {key: value for key, value in document.items() if key != "alternatives"}
    read = read_kept_week(book, client, document, desk.catalogue)
    return changed_week_document({}, read.parsed, read.audit)
