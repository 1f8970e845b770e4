"""The first page: every client with what is due, and the form that adds one."""

from __future__ import annotations

from datetime import date

from starlette.requests import Request
from starlette.responses import Response

from setwright.solver.book.clients import add_client
from setwright.solver.brief.file import parse_phrase
from setwright.solver.brief.parsed_brief import raw_of
from setwright.solver.desk.clock import today
from setwright.solver.desk.desk import desk_of
from setwright.solver.desk.forms import Fields
from setwright.solver.desk.pages import go_to, page
from setwright.solver.records.standing import standings
from setwright.solver.rulebook import RULES
from setwright.solver.sheets.screen.over_time.clients import Standing, asked, clients_document


def show_all(request: Request) -> Response:
    """All clients, those whose next session comes first before the others, those at rest last."""
    desk = desk_of(request)
    with desk.book() as book:
        found = sorted(standings(book, desk.catalogue, today()), key=_order)
    return page(request, "clients/all.html", clients_document(found), asked=asked, place=desk.place)


def _order(standing: Standing) -> tuple[bool, date, str]:
    coming = standing.due.next
    return standing.resting_since is not None, coming.on if coming else date.max, standing.code


def add(request: Request, fields: Fields) -> Response:
    """A new client with a brief read from a phrase; raises UsageFault with every fault."""
    desk = desk_of(request)
    code = fields.get("code", "")
    parsed = parse_phrase(fields.get("phrase", ""), desk.catalogue, tuple(RULES))
    raw = raw_of(parsed.brief)
    with desk.book() as book:
        client = add_client(
            book,
            code,
            {**raw, "client": {**raw["client"], "code": code.removeprefix("@").strip()}},
            fields.get("name", ""),
        )
    return go_to(request, f"/clients/{client.code}")
