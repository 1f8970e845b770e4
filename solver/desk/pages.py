"""Pages and answers: a template filled for a browser, the same values as JSON for a program that asks for them."""

from __future__ import annotations

from collections.abc import Mapping
from datetime import date, datetime
from pathlib import Path
from typing import Any, Final
from urllib.parse import quote, urlsplit

from jinja2 import Environment
from starlette.requests import Request
from starlette.responses import HTMLResponse, JSONResponse, RedirectResponse, Response

from setwright.catalogue.version import own_version
from setwright.solver.desk.clock import today
from setwright.solver.log.mondays import coming_monday
from setwright.solver.sheets.common.caution import CAUTION
from setwright.solver.sheets.common.words import clock, counted, whole_minutes
from setwright.solver.sheets.html.templates import templates_in

DATA: Final = Path(__file__).parent / "data"
JSON: Final = "application/json"
IN_ADDRESSES: Final = ":/%#?=@[]!$&'()*+,;"
"""What an address holds as it stands beside letters and digits; all else is written as % and hexadecimal digits."""


def environment() -> Environment:
    """The desk's templates with the words that all of them use."""
    house = templates_in(DATA)
    house.auto_reload = False
    house.globals |= {"version": own_version(), "today": today}
    house.globals |= {"coming_monday": coming_monday, "caution": CAUTION, "page_shown": page_shown}
    house.filters |= {"counted": counted, "clock": clock, "whole_minutes": whole_minutes}
    house.filters |= {"day": day_words, "at": moment_words}
    return house


def page(request: Request, template: str, document: Mapping[str, Any], status: int = 200, **more: Any) -> Response:
    """The answer to a request: `document` as JSON where JSON is asked for, else a page of it and of `more`.

    `more` is what a page alone needs, such as drawn charts: never a fact that the document lacks.
    """
    if wants_json(request):
        return JSONResponse(dict(document), status)
    house: Environment = request.app.state.house
    return HTMLResponse(house.get_template(template).render(request=request, d=document, **more), status)


def wants_json(request: Request) -> bool:
    """Whether a request asks for JSON."""
    return JSON in request.headers.get("accept", "")


def page_shown(request: Request) -> str:
    """The path of the page that a browser shows: of the one that htmx asks from, else of the request itself."""
    return urlsplit(request.headers.get("hx-current-url", "")).path or request.url.path


def go_to(request: Request, address: str) -> Response:
    """Send a browser on after an act: by htmx's own header where htmx asked, else by a redirect."""
    if wants_json(request):
        return JSONResponse({"address": address})
    if request.headers.get("hx-request"):
        return Response(status_code=204, headers={"HX-Redirect": quote(address, safe=IN_ADDRESSES)})
    return RedirectResponse(address, 303)


def moment_words(moment: str) -> str:
    """A moment of the book (UTC) as this computer's clock has it: Mon 30 Nov 2026, 18:05."""
    found = datetime.fromisoformat(moment).astimezone()
    return f"{day_words(found.date())}, {found:%H:%M}"


def day_words(day: date | str) -> str:
    """A date as it is read aloud: Mon 30 Nov 2026."""
    found = date.fromisoformat(day) if isinstance(day, str) else day
    return f"{found:%a} {found.day} {found:%b %Y}"
