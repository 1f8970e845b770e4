"""The entrance from a phone on the same network: by the password, or by a code that the desk shows."""

from __future__ import annotations

from typing import Final

from starlette.requests import Request
from starlette.responses import Response
from starlette.routing import Route

from setwright.catalogue.faults import Fault, UsageFault
from setwright.solver.desk.desk import desk_of
from setwright.solver.desk.forms import Fields, with_form
from setwright.solver.desk.pages import go_to, page


def ask(request: Request) -> Response:
    """The page that asks for the password or a code."""
    return page(request, "entrance/enter.html", {"open": desk_of(request).entrance.open})


def enter(request: Request, fields: Fields) -> Response:
    """Let a browser in by the password or a code; raises UsageFault."""
    entrance = desk_of(request).entrance
    if entrance.lets_in(fields.get("said", "")):
        return desk_of(request).keys.admit(go_to(request, "/"))
    wait = entrance.shut_for()
    remedy = f"try again in {wait} s" if wait else "a code holds for five minutes and lets in one browser"
    raise UsageFault(Fault("entrance", "this lets nobody in", remedy))


def phone(request: Request) -> Response:
    """The page that says how a phone comes in."""
    return page(request, "entrance/phone.html", {"open": desk_of(request).entrance.open, "code": None})


def code(request: Request, fields: Fields) -> Response:
    """A new code, shown once; raises UsageFault where the desk is served to this machine alone."""
    entrance = desk_of(request).entrance
    if not entrance.open:
        remedy = "close it, and open it as this page says"
        raise UsageFault(Fault("phone", "this desk is served to this machine alone", remedy))
    return page(request, "entrance/phone.html", {"open": True, "code": entrance.new_code()})


ROUTES: Final = (
    Route("/enter", ask),
    Route("/enter", with_form(enter), methods=["POST"]),
    Route("/phone", phone),
    Route("/phone", with_form(code), methods=["POST"]),
)
