"""A client's own page, and what is done to a client as a whole: name, rest, export, erasure."""

from __future__ import annotations

from dataclasses import asdict
from typing import Final

from starlette.requests import Request
from starlette.responses import Response

from setwright.catalogue.faults import Fault, UsageFault
from setwright.solver.book.care import BEYOND, erase
from setwright.solver.book.clients import client_of, health_of, rest, set_name
from setwright.solver.book.export import exported
from setwright.solver.book.stamps import EMPTY, news_since
from setwright.solver.desk.archive import archive
from setwright.solver.desk.clock import today
from setwright.solver.desk.desk import desk_of
from setwright.solver.desk.forms import Fields
from setwright.solver.desk.pages import go_to, page
from setwright.solver.desk.weeks.dates import date_said
from setwright.solver.records.standing import standing_of
from setwright.solver.sheets.screen.over_time.clients import asked, client_document

MOST_DONE: Final = 12
"""So many of the newest acts and changes are shown."""


def show(request: Request) -> Response:
    """What is asked, planned, done and changed; of health notes only whether there are some."""
    desk = desk_of(request)
    with desk.book() as book:
        client = client_of(book, request.path_params["code"])
        found = standing_of(book, client, desk.catalogue, today())
        done = [asdict(one) for one in news_since(book, client, EMPTY)]
        kept = bool(health_of(book, client).keys() & {"cautions", "clearance"})
    document = {**client_document(found), "cautions_kept": kept, "done": done[::-1][:MOST_DONE]}
    return page(request, "clients/client.html", document, asked=asked, beyond=BEYOND)


def name(request: Request, fields: Fields) -> Response:
    """Write down a client's name, or take it away."""
    with desk_of(request).book() as book:
        client = set_name(book, client_of(book, request.path_params["code"]), fields.get("name", ""))
    return go_to(request, f"/clients/{client.code}")


def resting(request: Request, fields: Fields) -> Response:
    """Put a client to rest since a day, today where none is said, or bring one back; raises UsageFault."""
    said = fields.get("since", "")
    since = None if fields.get("back") else date_said(said, "since") if said else today()
    with desk_of(request).book() as book:
        client = rest(book, client_of(book, request.path_params["code"]), since)
    return go_to(request, f"/clients/{client.code}")


def export(request: Request) -> Response:
    """All that the book holds of a client as a ZIP file, health notes in a file of their own."""
    with desk_of(request).book() as book:
        client = client_of(book, request.path_params["code"])
        files = exported(book, client)
    return archive(files, _file_name(client.code))


def erasing(request: Request, fields: Fields) -> Response:
    """Erase a client for ever, their searches too; raises UsageFault where the code was not typed to confirm it."""
    with desk_of(request).book() as book:
        client = client_of(book, request.path_params["code"])
        if fields.get("confirm", "").strip().removeprefix("@") != client.code:
            said = f"everything of @{client.code} would be erased for ever"
            raise UsageFault(Fault("confirm", said, f"type {client.code} to confirm it"))
        erase(book, client)
    desk_of(request).crew.forget(client.code)
    return go_to(request, "/")


def _file_name(code: str) -> str:
    """A code as a file's name in a header, which holds plain letters alone."""
    plain = code.encode("ascii", "ignore").decode()
    return plain or "client"
