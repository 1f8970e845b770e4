"""The addresses of a search: how it stands, its news as they come, and the act that stops it."""

from __future__ import annotations

import asyncio
import json
from collections.abc import AsyncIterator
from dataclasses import fields
from typing import Final

from jinja2 import Environment
from starlette.concurrency import run_in_threadpool
from starlette.requests import Request
from starlette.responses import Response, StreamingResponse
from starlette.routing import Route

from setwright.catalogue.faults import Fault, SetwrightError, UsageFault
from setwright.solver.book.clients import UnknownClient
from setwright.solver.desk.desk import desk_of
from setwright.solver.desk.pages import go_to, page
from setwright.solver.desk.refusals import faults_of
from setwright.solver.desk.searches.search import Search
from setwright.solver.desk.searches.task import ENDED

TICK: Final = 0.1
"""Seconds between two looks at a search."""
BREATH: Final = 15.0
"""Seconds of silence after which a line is sent that keeps the connection open."""

ABOUT: Final = ("search", "starts", "why", "question", "value", "monday", "count", "names", "stamp")
"""The arguments of a task that its page says again; briefs and weeks, which may hold health notes, are not of them."""


def search_of(request: Request) -> Search:
    """The search that an address names; raises UsageFault where it is forgotten."""
    found = desk_of(request).crew.search(request.path_params["search"])
    if found is None:
        raise UsageFault(Fault("search", "is over and forgotten", "ask for it again on the client's page"))
    return found


def show(request: Request) -> Response:
    """How a search stands."""
    search = search_of(request)
    return page(request, "searches/search.html", standing(search))


def stop(request: Request) -> Response:
    """Stop a search; what it has found so far stays."""
    search = search_of(request)
    desk_of(request).crew.stop(search)
    return go_to(request, f"/searches/{search.id}")


def waited(request: Request) -> Response:
    """Note that a page which is out of sight, and so does not listen, still waits for the search."""
    desk_of(request).wait_for(search_of(request).id)
    return Response(status_code=204)


async def news(request: Request) -> Response:
    """How a search stands, once now and once after each change, as server-sent events of HTML.

    The last one is how it ended, or what is amiss where the search or its client is gone.
    """
    search = search_of(request)

    async def events() -> AsyncIterator[str]:
        seen, silent = -1, 0.0
        while not request.app.state.ending() and not await request.is_disconnected():
            known, told = desk_of(request).crew.search(search.id), search.told
            if told.count != seen or known is None:
                seen, silent = told.count, 0.0
                html, over = await run_in_threadpool(_fragment, request, search)
                yield _event("end" if over else "standing", html)
                if over:
                    return
            await asyncio.sleep(TICK)
            silent += TICK
            if silent > BREATH:
                silent = 0.0
                yield ": still searching\n\n"

    return StreamingResponse(events(), media_type="text/event-stream")


def _fragment(request: Request, search: Search) -> tuple[str, bool]:
    """The part of a page that shows a search, and whether nothing follows; made beside the loop that answers others."""
    house: Environment = request.app.state.house
    try:
        search_of(request)
        stands = standing(search)
        return house.get_template("searches/standing.html").render(request=request, d=stands), stands["state"] in ENDED
    except SetwrightError as error:
        if isinstance(error, UnknownClient):
            desk_of(request).crew.forget(search.asker)
        faults = {"faults": faults_of(error)}
        return house.get_template("searches/gone.html").render(request=request, d=faults), True


def standing(search: Search) -> dict[str, object]:
    """How a search stands as a document; what it told is handed on as it is, never copied."""
    told = {field.name: getattr(search.told, field.name) for field in fields(search.told) if field.name != "count"}
    about = {key: value for key, value in search.task.arguments.items() if key in ABOUT}
    named = {"id": search.id, "client": search.asker, "task": search.task.name, "about": about}
    return {"schema": "setwright.search/1", **named, **told}


def _event(name: str, html: str) -> str:
    """One server-sent event; the HTML goes as a JSON string, so that it holds no line end."""
    return f"event: {name}\ndata: {json.dumps(html)}\n\n"


ROUTES: Final = (
    Route("/searches/{search}", show),
    Route("/searches/{search}/stop", stop, methods=["POST"]),
    Route("/searches/{search}/waited", waited, methods=["POST"]),
    Route("/searches/{search}/news", news),
)
