"""A window told that its client was changed elsewhere: in another window, or by a command."""

from __future__ import annotations

import asyncio
import json
from collections.abc import AsyncIterator
from dataclasses import asdict
from typing import Any, Final

from starlette.concurrency import run_in_threadpool
from starlette.requests import Request
from starlette.responses import Response, StreamingResponse

from setwright.catalogue.faults import SetwrightError
from setwright.solver.book.clients import client_of
from setwright.solver.book.stamps import news_since, version_stamp
from setwright.solver.desk.desk import desk_of

TICK: Final = 1.0
"""Seconds between two looks at the book."""
BREATH: Final = 15.0
"""Seconds of silence after which a line is sent that keeps the connection open."""


async def changes(request: Request) -> Response:
    """Server-sent events: `changed` with a JSON document as often as the client was changed after the stamp `since`."""
    code, seen = request.path_params["code"], request.query_params.get("since", "")
    first = await run_in_threadpool(_told, request, code, seen or None)
    seen = seen or first["stamp"]

    async def events() -> AsyncIterator[str]:
        shown, silent = seen, 0.0
        yield ": watching\n\n"
        while not request.app.state.ending() and not await request.is_disconnected():
            try:
                told = await run_in_threadpool(_told, request, code, seen)
            except SetwrightError:
                yield "event: gone\ndata: {}\n\n"
                return
            if told["stamp"] != shown:
                shown, silent = told["stamp"], 0.0
                yield f"event: changed\ndata: {json.dumps(told)}\n\n"
            await asyncio.sleep(TICK)
            silent += TICK
            if silent > BREATH:
                silent = 0.0
                yield ": still watching\n\n"

    return StreamingResponse(events(), media_type="text/event-stream")


def _told(request: Request, code: str, since: str | None) -> dict[str, Any]:
    """The stamp that holds, and what was done after an earlier one; raises UsageFault for an unknown code."""
    with desk_of(request).book() as book:
        client = client_of(book, code)
        stamp = version_stamp(book, client)
        news = [] if since is None or since == stamp else news_since(book, client, since)
        return {"stamp": stamp, "since": [asdict(one) for one in news]}
