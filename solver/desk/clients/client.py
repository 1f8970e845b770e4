"""A client's own page."""

from __future__ import annotations

from starlette.requests import Request
from starlette.responses import Response

from setwright.solver.desk.desk import desk_of
from setwright.solver.desk.pages import page
from setwright.solver.records.standing import standing_of
from setwright.solver.sheets.screen.over_time.clients import asked, client_document


def show(request: Request) -> Response:
    """What is asked, planned and done; no health note is on it."""
    with desk_of(request).book() as book:
        found = standing_of(book, request.path_params["code"])
    return page(request, "clients/client.html", client_document(found), asked=asked)
