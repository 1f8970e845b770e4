"""What a form sent: its fields as text, without what no field may hold; and an act on a client in its turn."""

from __future__ import annotations

import asyncio
from collections.abc import Awaitable, Callable, Mapping
from functools import partial, wraps

from anyio import to_thread
from starlette.requests import Request
from starlette.responses import Response

from setwright.solver.desk.desk import desk_of
from setwright.solver.desk.pages import wants_json
from setwright.solver.desk.stamp import check_stamp, with_turns

Fields = Mapping[str, str]
Acting = Callable[[Request, Fields], Response]
MOST_FIELDS = 500


def with_form(act: Acting, writes: bool = True) -> Callable[[Request], Awaitable[Response]]:
    """An act that is given a form's fields, run beside the loop that answers other requests.

    A field that was sent twice counts with its last value; `many` reads all of one name. An act on a client has its
    turn, and is refused with Conflict where the client was changed after its page was shown; one that `writes`
    nothing needs neither. An act on a line of a week that was shown needs both also where it only begins a search: the
    line's place may have changed.
    """

    @wraps(act)
    async def acting(request: Request) -> Response:
        async with request.form(max_fields=MOST_FIELDS, max_files=1) as form:
            request.state.form, request.state.form_items = form, form.multi_items()
            fields = {key: value for key, value in form.multi_items() if isinstance(value, str)}
            doing = partial(_in_turn if writes else _at_once, act, request, fields)
            return await to_thread.run_sync(doing, limiter=request.app.state.acting)

    assert not asyncio.iscoroutinefunction(act)
    return acting


def many(request: Request, name: str) -> tuple[str, ...]:
    """Every value that a form sent under one name."""
    return tuple(value for value in request.state.form.getlist(name) if isinstance(value, str))


def _at_once(act: Acting, request: Request, fields: Fields) -> Response:
    return act(request, fields)


def _in_turn(act: Acting, request: Request, fields: Fields) -> Response:
    """The answer to an act on a client whom nobody changed since; a window that stays is told what holds now."""
    code = request.path_params.get("code")
    if code is None:
        return act(request, fields)
    with desk_of(request).turn(code):
        check_stamp(request, fields)
        answer = act(request, fields)
        stays = answer.status_code == 200 and request.headers.get("hx-request") and not wants_json(request)
        return with_turns(request, code, answer) if stays else answer
