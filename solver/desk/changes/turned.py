"""The last act on a client taken back, and done again."""

from __future__ import annotations

from collections.abc import Callable
from typing import Final
from urllib.parse import unquote

from starlette.requests import Request
from starlette.responses import Response

from setwright.solver.book.clients import Client, client_of
from setwright.solver.book.opened import Book
from setwright.solver.book.undone import Act, do_again, take_back
from setwright.solver.desk.desk import desk_of
from setwright.solver.desk.forms import Fields
from setwright.solver.desk.pages import go_to
from setwright.solver.records.weeks_planned import mondays_planned

LASTING: Final = ("", "brief", "weeks", "compare", "block", "log")
"""The pages that a client has whatever is taken back; a week's page is one of them while the week is planned."""


def back(request: Request, fields: Fields) -> Response:
    """Take back the newest act, and show the page again; raises UsageFault where there is none."""
    return _turned(request, fields, take_back)


def again(request: Request, fields: Fields) -> Response:
    """Do again what was taken back last, and show the page again; raises UsageFault where there is none."""
    return _turned(request, fields, do_again)


def _turned(request: Request, fields: Fields, turn: Callable[[Book, Client], Act]) -> Response:
    with desk_of(request).book() as book:
        client = client_of(book, request.path_params["code"])
        turn(book, client)
        weeks = [f"weeks/{monday}" for monday in mondays_planned(book, client)]
    here = f"/clients/{client.code}"
    pages = [f"{here}/{page}" if page else here for page in (*LASTING, *weeks)]
    shown = unquote(fields.get("page", here))
    return go_to(request, shown if shown in pages else here)
