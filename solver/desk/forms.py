"""What a form sent: its fields as text, without what no field may hold."""

from __future__ import annotations

import asyncio
from collections.abc import Awaitable, Callable, Mapping
from functools import wraps

from starlette.concurrency import run_in_threadpool
from starlette.requests import Request
from starlette.responses import Response

Fields = Mapping[str, str]
MOST_FIELDS = 500


def with_form(act: Callable[[Request, Fields], Response]) -> Callable[[Request], Awaitable[Response]]:
    """An act that is given a form's fields, run beside the loop that answers other requests.

    A field that was sent twice counts with its last value; `many` reads all of one name.
    """

    @wraps(act)
    async def acting(request: Request) -> Response:
        async with request.form(max_fields=MOST_FIELDS, max_files=1) as form:
            request.state.form = form
            fields = {key: value for key, value in form.multi_items() if isinstance(value, str)}
            return await run_in_threadpool(act, request, fields)

    assert not asyncio.iscoroutinefunction(act)
    return acting


def many(request: Request, name: str) -> tuple[str, ...]:
    """Every value that a form sent under one name."""
    return tuple(value for value in request.state.form.getlist(name) if isinstance(value, str))
