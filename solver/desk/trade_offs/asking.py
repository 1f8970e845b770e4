"""What the three pages share: the client's brief, how hard to search, and the search that was asked for last."""

from __future__ import annotations

from typing import Any

from starlette.requests import Request

from setwright.solver.book.clients import brief_of, client_of
from setwright.solver.desk.desk import desk_of
from setwright.solver.desk.searches.task import Task
from setwright.solver.sheets.screen.over_time.clients import asked

SCHEMA = "setwright.trade-offs/1"


def form_document(request: Request, task: str, **offered: Any) -> dict[str, Any]:
    """What a page offers, and how the search of its kind stands that was asked for last; no health note is in it."""
    desk = desk_of(request)
    with desk.book() as book:
        client = client_of(book, request.path_params["code"])
    latest = desk.crew.latest(client.code, task)
    return {
        "schema": SCHEMA,
        "code": client.code,
        "asked": asked(client.brief),
        "task": task,
        **offered,
        "latest": latest and {"id": latest.id, "state": latest.told.state, "seconds": latest.told.seconds},
    }


def begun(request: Request, name: str, **arguments: Any) -> str:
    """Begin a search on a client's newest brief; the address where it is seen."""
    desk = desk_of(request)
    with desk.book() as book:
        client = client_of(book, request.path_params["code"])
        task: Task = desk.task(name, brief=brief_of(book, client), **arguments)
    return f"/searches/{desk.crew.ask(client.code, task).id}"
