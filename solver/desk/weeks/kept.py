"""A client's weeks: all of them, and each as a coach reads it."""

from __future__ import annotations

from collections.abc import Mapping
from datetime import date
from typing import Any

from markupsafe import Markup
from starlette.requests import Request
from starlette.responses import Response

from setwright.catalogue.faults import Fault, UsageFault
from setwright.solver.book.clients import client_of
from setwright.solver.desk.desk import Desk, desk_of
from setwright.solver.desk.pages import page
from setwright.solver.desk.weeks.dates import date_said
from setwright.solver.log.mondays import monday_of
from setwright.solver.records.week_at_hand import WeekAtHand, week_at_hand
from setwright.solver.records.weeks_planned import weeks_document, weeks_planned
from setwright.solver.sheets.charts.drawing import ChartStyle
from setwright.solver.sheets.charts.time_use import time_chart
from setwright.solver.sheets.handout.coach import DEFAULT_COACH
from setwright.solver.sheets.handout.handout import handout_of, private_document
from setwright.solver.sheets.handout.values import Handout, Session
from setwright.solver.sheets.screen.edits.differences import broken_document
from setwright.solver.sheets.screen.edits.line_choices import line_key


def show_all(request: Request) -> Response:
    """Every week that was kept or stands in a block, the newest first."""
    with desk_of(request).book() as book:
        client = client_of(book, request.path_params["code"])
        found = weeks_planned(book, client)
    return page(request, "weeks/all.html", weeks_document(client, found))


def show(request: Request) -> Response:
    """A client's week of a Monday."""
    week = week_of(request)
    return page(request, "weeks/kept.html", week_document_of(week), **shown(desk_of(request), week, request))


def week_of(request: Request) -> WeekAtHand:
    """The week that an address names, read with the client's health notes; raises UsageFault where there is none."""
    desk = desk_of(request)
    with desk.book() as book:
        client = client_of(book, request.path_params["code"])
        found = week_at_hand(book, client, desk.catalogue, monday_in(request))
    if found is None:
        raise UsageFault(Fault("week", "none is planned for these days", "find one on the client's page"))
    return found


def monday_in(request: Request) -> date:
    """The Monday of the day that an address names; raises UsageFault."""
    return monday_of(date_said(request.path_params["monday"], "week"))


def week_document_of(week: WeekAtHand, edit: Mapping[str, Any] | None = None) -> dict[str, Any]:
    """The week's own document with what it breaks and, after a change, with what that did."""
    resolved = week.audit.evaluated.resolved
    broken = [broken_document(finding, resolved) for finding in week.audit.broken]
    return {**week.document, "said": week.said, "broken": broken, "edit": None if edit is None else dict(edit)}


def shown(desk: Desk, week: WeekAtHand, request: Request) -> dict[str, Any]:
    """What a page of a week needs beside its document: its cards, where minutes go, and how its lines are addressed."""
    handout = handout_for_coach(desk, week)
    longest = 60 * max(session.given for session in handout.sessions)
    evaluated = week.audit.evaluated
    return {
        "h": handout,
        "code": request.path_params["code"],
        "monday": monday_in(request),
        "keys": [[line_key(line) for line in lines] for lines in evaluated.on],
        "charts": [_chart(session, longest) for session in handout.sessions],
        "pinned": evaluated.resolved.pinned,
        "changed": "",
        "changed_day": None,
    }


def handout_for_coach(desk: Desk, week: WeekAtHand) -> Handout:
    """The week as cards show it, for the coach's own eyes: a clearance that is missing does not hold it back."""
    document, resolved = private_document(week.document, week.parsed.brief), week.audit.evaluated.resolved
    return handout_of(document, desk.catalogue, DEFAULT_COACH, clearance_due=False, resolved=resolved)


def _chart(session: Session, longest: int) -> Markup:
    """A bar of where a session's minutes go, on the scale of the longest session's seconds."""
    style = ChartStyle(key=f"time-{session.number}")
    return Markup(time_chart([session], style, longest) if session.lines else "")
