"""A log looked through: what looks like a slip or is unlike the plan, and how long the client takes."""

from __future__ import annotations

from typing import Any

from starlette.requests import Request
from starlette.responses import Response

from setwright.catalogue.faults import SetwrightError, not_installed
from setwright.solver.book.clients import client_of
from setwright.solver.desk.clock import today
from setwright.solver.desk.desk import desk_of
from setwright.solver.desk.forms import Fields
from setwright.solver.desk.pages import go_to, page
from setwright.solver.desk.weeks.dates import date_said
from setwright.solver.records.logs.checked_log import checked_log
from setwright.solver.sheets.document.progress.pace_document import pace_document
from setwright.solver.sheets.screen.over_time.log import findings_document
from setwright.solver.sheets.screen.progress.pace_words import (
    PACE_HEADS,
    basis_words,
    not_enough_words,
    pace_notes,
    pace_row,
)
from setwright.solver.uses.pace.client_pace import ClientPace, NotEnough


def show_checks(request: Request) -> Response:
    """What a coach may want to look at; nothing of it is an error."""
    desk, said = desk_of(request), request.query_params.get("from", "")
    first = date_said(said, "from") if said else None
    with desk.book() as book:
        client = client_of(book, request.path_params["code"])
        found = checked_log(book, client, desk.catalogue, today(), first)
    document = findings_document(found, desk.catalogue)
    return page(request, "log/check.html", document, code=client.code, first=first)


def show_pace(request: Request) -> Response:
    """The client's pace by the block of a day, or what is lacking to tell it; raises UsageFault without a block."""
    code, pace = _pace(request)
    more: dict[str, Any] = {
        "code": code,
        "lacking": not_enough_words(pace) if isinstance(pace, NotEnough) else None,
        "basis": None if isinstance(pace, NotEnough) else basis_words(pace),
        "heads": PACE_HEADS,
        "rows": [] if isinstance(pace, NotEnough) else [pace_row(part) for part in pace.parts],
        "notes": [] if isinstance(pace, NotEnough) else list(pace_notes(pace)),
    }
    return page(request, "log/pace.html", pace_document(pace), **more)


def take(request: Request, fields: Fields) -> Response:
    """Take the pace over into the brief, as a new version; raises UsageFault where there is none."""
    from setwright.solver.records.logs.paces import take_pace

    code, pace = _pace(request)
    with desk_of(request).book() as book:
        take_pace(book, client_of(book, code), pace, "pace")
    return go_to(request, f"/clients/{code}/brief")


def _pace(request: Request) -> tuple[str, ClientPace | NotEnough]:
    """The client's code and pace."""
    desk = desk_of(request)
    try:
        from setwright.solver.records.logs.paces import pace_of

        with desk.book() as book:
            client = client_of(book, request.path_params["code"])
            return client.code, pace_of(book, client, desk.catalogue, today())
    except ModuleNotFoundError as error:
        raise SetwrightError(not_installed("pace", (error.name or "").partition(".")[0], "pace")) from None
