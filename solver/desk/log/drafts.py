"""What a browser keeps of a session: of whom it is, under which name, and the worker that shows its page offline."""

from __future__ import annotations

from collections.abc import Mapping
from datetime import date

from starlette.requests import Request
from starlette.responses import FileResponse, Response

from setwright.catalogue.faults import Fault, UsageFault
from setwright.solver.book.clients import Client
from setwright.solver.desk.pages import DATA
from setwright.solver.log.mondays import monday_of
from setwright.solver.log.values import LoggedSession


def identity(client: Client) -> str:
    """What tells a client from another of the same code: in another book, or written down after an erasure."""
    return f"@{client.code}, {client.added}"


def draft_name(client: Client, on: date, number: int | None, standing: LoggedSession | None) -> str:
    """The name under which what is typed is kept: of one client, week, session and day, and of one that stands."""
    session = "no number" if number is None else f"session {number}"
    anew = "" if standing is None else f", {standing.started or 'the one'} written anew"
    return f"{identity(client)}, week of {monday_of(on)}, {session}, {on}{anew}"


def page_address(client: Client, on: date, number: int | None, standing: LoggedSession | None) -> str:
    """The address of the page on which a draft is gone on with."""
    asked = [] if standing is None else ["anew=1"]
    asked += [] if number is None else [f"session={number}"]
    if standing is not None and number is None and standing.started is not None:
        asked.append(f"started={standing.started:%H:%M}")
    return f"/clients/{client.code}/log/{on}{'?' if asked else ''}{'&'.join(asked)}"


def refuse_another(client: Client, fields: Mapping[str, str]) -> None:
    """Raise UsageFault where a session that was kept in a browser is of another client of the same code."""
    if fields.get("of", "") not in ("", identity(client)):
        said = f"was typed for another @{client.code}, of another book or one that was erased"
        raise UsageFault(Fault("session", said, "open the book that it was typed for, or throw it away"))


def keeper(request: Request) -> Response:
    """The service worker's script; below this address it may keep the gym pages of one client and nothing else."""
    return FileResponse(DATA / "static" / "gym" / "keeper.js", media_type="text/javascript")
