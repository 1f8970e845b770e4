"""A kept week as it is read: sessions, muscles, what it is worth."""

from __future__ import annotations

from typing import Any

from starlette.requests import Request
from starlette.responses import Response

from setwright.catalogue.faults import Fault, UsageFault
from setwright.solver.book.clients import client_of
from setwright.solver.brief.parsed_brief import raw_of
from setwright.solver.desk.desk import desk_of
from setwright.solver.desk.pages import page
from setwright.solver.desk.weeks.dates import date_said
from setwright.solver.records.week_at_hand import WeekAtHand, week_at_hand
from setwright.solver.sheets.handout.coach import DEFAULT_COACH
from setwright.solver.sheets.handout.handout import handout_of
from setwright.solver.sheets.handout.values import Handout


def show(request: Request) -> Response:
    """A client's week of a Monday."""
    week = week_of(request)
    more = {"h": handout_for_coach(request, week), "week": week, "code": request.path_params["code"]}
    return page(request, "weeks/kept.html", week.document, **more)


def week_of(request: Request) -> WeekAtHand:
    """The week that an address names, read with the client's health notes; raises UsageFault where there is none."""
    desk = desk_of(request)
    with desk.book() as book:
        client = client_of(book, request.path_params["code"])
        found = week_at_hand(book, client, desk.catalogue, date_said(request.path_params["monday"], "week"))
    if found is None:
        raise UsageFault(Fault("week", "none is planned for these days", "find one on the client's page"))
    return found


def handout_for_coach(request: Request, week: WeekAtHand) -> Handout:
    """The week as cards show it, for the coach's own eyes: a clearance that is missing does not hold it back."""
    document: dict[str, Any] = {**week.document, "brief": raw_of(week.parsed.brief), "private_left_out": False}
    return handout_of(document, desk_of(request).catalogue, DEFAULT_COACH, clearance_due=False)
