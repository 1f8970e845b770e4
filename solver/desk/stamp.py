"""The stamp of a client's page: how the client stood when it was shown, held against how they stand when it acts."""

from __future__ import annotations

import json
from collections.abc import Mapping
from dataclasses import asdict
from typing import Any, Final

from markupsafe import Markup
from starlette.concurrency import run_in_threadpool
from starlette.requests import Request
from starlette.responses import HTMLResponse, Response
from starlette.types import ASGIApp, Receive, Scope, Send

from setwright.catalogue.faults import Fault, SetwrightError
from setwright.solver.book.clients import client_of
from setwright.solver.book.stamps import News, news_since, version_stamp
from setwright.solver.book.undone import journal_of
from setwright.solver.desk.desk import desk_of

FIELD: Final = "stamp"
"""The field of a form that carries the stamp."""
CLIENTS: Final = "/clients/"


class Conflict(SetwrightError):
    """Raised where a client was changed after the page was shown that acts on them."""

    def __init__(self, code: str, stamp: str, news: tuple[News, ...]) -> None:
        said = "was changed after this page was shown, and nothing of yours was written"
        super().__init__(Fault(f"@{code}", said, "look at what was changed, or write yours all the same"))
        self.code, self.stamp, self.news = code, stamp, news

    def document(self) -> dict[str, Any]:
        """The client's code, the stamp that holds now, and what was done since the page was shown."""
        news = [asdict(one) for one in self.news]
        return {"schema": "setwright.conflict/1", "code": self.code, FIELD: self.stamp, "since": news}


def stamp_of(request: Request, code: str) -> str:
    """How a client stands, as one word; raises UsageFault for an unknown code."""
    with desk_of(request).book() as book:
        return version_stamp(book, client_of(book, code))


def check_stamp(request: Request, fields: Mapping[str, str]) -> None:
    """Raise Conflict where the client of an address was changed since the form's page was shown.

    A form without a stamp comes from a program that looked at no page, and is not checked.
    """
    code, shown = request.path_params.get("code"), fields.get(FIELD)
    if code is None or not shown:
        return
    with desk_of(request).book() as book:
        client = client_of(book, code)
        now = version_stamp(book, client)
        if now != shown:
            raise Conflict(client.code, now, news_since(book, client, shown))


def asked_under(request: Request, fields: Mapping[str, str]) -> str:
    """The stamp of the page that an act was sent from, else the one that holds: what comes of it later is kept so."""
    return fields.get(FIELD) or stamp_of(request, request.path_params["code"])


def go_on_under(request: Request, stamp: str) -> None:
    """Let the forms of an answer carry a stamp that is older than the answer: that of the page they are put into."""
    setattr(request.state, FIELD, stamp)


def page_state(request: Request, code: str) -> dict[str, Any]:
    """What each page of a client carries: the stamp, and what can be taken back and done again, in words or None."""
    if not hasattr(request.state, "page_state"):
        with desk_of(request).book() as book:
            client = client_of(book, code)
            journal, stamp = journal_of(book, client), version_stamp(book, client)
        request.state.page_state = {
            FIELD: getattr(request.state, FIELD, stamp),
            "back": journal.holding[-1].said if journal.holding else None,
            "again": journal.waiting[-1].said if journal.waiting else None,
        }
    state: dict[str, Any] = request.state.page_state
    return state


def stamp_field(request: Request, code: str) -> Markup:
    """The hidden field of a form that acts on a client."""
    return Markup('<input type="hidden" name="{}" value="{}">').format(FIELD, page_state(request, code)[FIELD])


def with_turns(request: Request, code: str, answer: Response) -> Response:
    """The answer to an act after which its window stays on its page: with the new stamp, and what can be taken back."""
    for name in ("page_state", FIELD):
        if hasattr(request.state, name):
            delattr(request.state, name)
    state = page_state(request, code)
    turns = request.app.state.house.get_template("changes/turns.html").render(request=request, code=code, beside=True)
    stayed = HTMLResponse(bytes(answer.body) + turns.encode())
    stayed.headers["HX-Trigger-After-Settle"] = json.dumps({"stamped": state[FIELD]})
    return stayed


class Stamping:
    """Reads a client's stamp before their page is made, so that no write made meanwhile is missed."""

    def __init__(self, app: ASGIApp) -> None:
        self._app = app

    async def __call__(self, scope: Scope, receive: Receive, send: Send) -> None:
        """Note the stamp of a client's page, and pass on; as ASGI has it."""
        if scope["type"] == "http" and scope["method"] == "GET" and scope["path"].startswith(CLIENTS):
            code = scope["path"][len(CLIENTS) :].partition("/")[0]
            try:
                stamp = await run_in_threadpool(stamp_of, Request(scope), code)
            except SetwrightError:
                pass  # the page itself says what is amiss
            else:
                scope.setdefault("state", {})[FIELD] = stamp
        await self._app(scope, receive, send)
