"""A session as it is written down in the gym: big rows of sets filled in with their targets, or with what was done."""

from __future__ import annotations

import secrets
from datetime import date
from typing import Any

from starlette.requests import Request
from starlette.responses import Response

from setwright.catalogue.faults import Fault, UsageFault
from setwright.solver.book.clients import Client, client_of
from setwright.solver.book.opened import Book
from setwright.solver.book.sessions import sessions_of
from setwright.solver.desk.clock import today
from setwright.solver.desk.desk import desk_of
from setwright.solver.desk.field_values import whole_said
from setwright.solver.desk.log.drafts import draft_name, identity, page_address
from setwright.solver.desk.log.gym_lines import done_lines, empty_line, planned_lines
from setwright.solver.desk.pages import go_to, page, wants_json
from setwright.solver.desk.weeks.dates import date_said
from setwright.solver.log.values import LoggedSession
from setwright.solver.records.logs.session_at_hand import SessionAtHand, session_at_hand
from setwright.solver.sheets.common.words import day_name
from setwright.solver.sheets.document.progress.log_model import MOST_SESSIONS
from setwright.solver.sheets.document.progress.next_document import next_document

TODAY = "today"


def show_session(request: Request) -> Response:
    """The session of a day to write down; with ?anew=1 the one that stands there, to be written in its place."""
    desk, on, query = desk_of(request), day_of(request), request.query_params
    if request.path_params["day"] == TODAY and not wants_json(request):
        return go_to(request, f"/clients/{request.path_params['code']}/log/{on}")
    number = whole_said(query["session"], "session", (1, MOST_SESSIONS)) if query.get("session") else None
    with desk.book() as book:
        client = client_of(book, request.path_params["code"])
        standing = _standing(book, client, on, number, query.get("started")) if "anew" in query else None
        hand = session_at_hand(book, client, desk.catalogue, on, None if standing else number)
    document = next_document(hand.targets, hand.evaluated, client.unit, on) if hand else _nothing(client, on)
    planned = list(planned_lines(hand)) if hand and standing is None else []
    number = _number(hand, standing)
    more: dict[str, Any] = {
        "code": client.code,
        "on": on,
        "key": secrets.token_urlsafe(12),
        "unit": client.unit,
        "lines": done_lines(standing, desk.catalogue) if standing else planned,
        "empty": empty_line(),
        "standing": standing,
        "choices": _choices(hand) if hand and standing is None else [],
        "number": number,
        "of": identity(client),
        "draft": draft_name(client, on, number, standing),
        "shown_at": page_address(client, on, number, standing),
        "names": sorted(exercise.name for exercise in desk.catalogue.exercises.values()),
    }
    return page(request, "log/gym.html", document, **more)


def day_of(request: Request) -> date:
    """The day that an address names, a date or `today`; raises UsageFault."""
    said = request.path_params["day"]
    return today() if said == TODAY else date_said(said, "day")


def _nothing(client: Client, on: date) -> dict[str, Any]:
    """The document of a day for which nothing is planned."""
    return {"schema": "setwright.next/1", "on": on.isoformat(), "unit": client.unit, "lines": []}


def _number(hand: SessionAtHand | None, standing: LoggedSession | None) -> int | None:
    """The number of the session in its week, where the log has one or the week is planned."""
    if standing is not None:
        return standing.session
    return None if hand is None else hand.day + 1


def _choices(hand: SessionAtHand) -> list[dict[str, Any]]:
    """The week's sessions: number, name, when it was done, whether it is the one shown."""
    days = hand.evaluated.resolved.days
    return [
        {"number": day.index + 1, "name": day_name(day), "done": hand.done_on[day.index], "here": day.index == hand.day}
        for day in days
        if hand.evaluated.on[day.index]
    ]


def _standing(book: Book, client: Client, on: date, number: int | None, started: str | None) -> LoggedSession:
    """The session that stands on a day; raises UsageFault where none does."""
    for session in sessions_of(book, client):
        clock = None if session.session or session.started is None else f"{session.started:%H:%M}"
        if session.on == on and session.session == number and clock == started:
            return session
    raise UsageFault(Fault("session", f"none is logged there on {on}", "see the log"))
