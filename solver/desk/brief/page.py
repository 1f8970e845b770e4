"""The page of a client's brief: shown, read while it is typed, and written down as a new version."""

from __future__ import annotations

from typing import Any

from starlette.requests import Request
from starlette.responses import Response

from setwright.catalogue.faults import UsageFault
from setwright.solver.book.clients import Client, brief_of, client_of, keep_brief
from setwright.solver.book.opened import Book
from setwright.solver.brief.defaults import WEEKDAY_NAMES, WEEKDAYS
from setwright.solver.brief.parsed_brief import ParsedBrief, parse_brief, raw_of
from setwright.solver.desk.brief.form_read import brief_of_form
from setwright.solver.desk.brief.said import Said, from_form, from_phrase, said_of
from setwright.solver.desk.desk import desk_of
from setwright.solver.desk.forms import Fields
from setwright.solver.desk.pages import go_to, page, wants_json
from setwright.solver.records.changed_brief import refuse_another_unit, what_changed
from setwright.solver.rulebook import RULES


def show(request: Request) -> Response:
    """The newest brief of a client, with the health notes: for the coach."""
    catalogue = desk_of(request).catalogue
    client, before = _before(request)
    return _page(request, client, said_of(before, catalogue), before, "brief/brief.html")


def save(request: Request, fields: Fields) -> Response:
    """Write the form down as a new version, or nothing where it says the same; raises UsageFault with every fault."""
    desk = desk_of(request)
    with desk.book() as book:
        client = client_of(book, request.path_params["code"])
        before = _parsed(book, client, request)
        raw = raw_of(from_form(fields, before.brief, desk.catalogue).brief)
        refuse_another_unit(book, client, raw["client"]["unit"], "unit")
        keep_brief(book, client, raw, what_changed(raw_of(before.brief), raw))
    return go_to(request, f"/clients/{client.code}/brief")


def read(request: Request, fields: Fields) -> Response:
    """The form or the phrase read, and the other filled from it; nothing is written down."""
    catalogue = desk_of(request).catalogue
    client, before = _before(request)
    typed, by_phrase = fields.get("phrase", ""), fields.get("from") == "phrase"
    try:
        if by_phrase:
            parsed = from_phrase(typed, _as_far_as_read(fields, before, request), catalogue)
        else:
            parsed = brief_of_form(fields, before.brief, catalogue)
        said = said_of(parsed, catalogue, typed if by_phrase else None)
    except UsageFault as error:
        shown = fields.get("shown", "")
        said, parsed = Said(dict(fields), typed, shown, (), (), (), tuple(error.faults)), before
    if not request.headers.get("hx-request"):
        return _page(request, client, said, parsed, "brief/brief.html")
    template = "brief/by_phrase.html" if by_phrase else "brief/by_fields.html"
    answer = _page(request, client, said, parsed, template)
    if said.faults:
        answer.headers["HX-Reswap"] = "none"
    return answer


def _as_far_as_read(fields: Fields, before: ParsedBrief, request: Request) -> Any:
    """The brief that the form says beside a typed phrase, or the one before where it cannot be read."""
    try:
        return brief_of_form(fields, before.brief, desk_of(request).catalogue).brief
    except UsageFault:
        return before.brief


def _before(request: Request) -> tuple[Client, ParsedBrief]:
    """The client of an address, and the brief that holds."""
    with desk_of(request).book() as book:
        client = client_of(book, request.path_params["code"])
        return client, _parsed(book, client, request)


def _parsed(book: Book, client: Client, request: Request) -> ParsedBrief:
    return parse_brief(brief_of(book, client), desk_of(request).catalogue, f"@{client.code}", tuple(RULES))


def _page(request: Request, client: Client, said: Said, parsed: ParsedBrief, template: str) -> Response:
    document = said.document(client.code, client.version, parsed.brief)
    if wants_json(request):
        return page(request, template, document)
    catalogue = desk_of(request).catalogue
    names = [exercise.name.lower() for exercise in catalogue.exercises.values()]
    more: dict[str, Any] = {
        "s": said,
        "catalogue": catalogue,
        "weekdays": list(zip(WEEKDAYS, WEEKDAY_NAMES, strict=True)),
        "exercises": names,
        "movements": list(dict.fromkeys(slot.movement for slot in catalogue.slots.values())),
    }
    return page(request, template, document, **more)
