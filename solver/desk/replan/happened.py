"""What happened in a week as a form, the search for what is left of it, and the act that keeps the week."""

from __future__ import annotations

from datetime import date
from typing import Any

from starlette.requests import Request
from starlette.responses import Response

from setwright.catalogue.fault_collector import FaultCollector
from setwright.catalogue.faults import Fault, UsageFault
from setwright.solver.book.clients import Client, client_of
from setwright.solver.book.opened import Book
from setwright.solver.book.planned import keep_week
from setwright.solver.book.sessions import sessions_of
from setwright.solver.brief.parsed_brief import raw_of
from setwright.solver.desk.clock import today
from setwright.solver.desk.desk import Desk, desk_of
from setwright.solver.desk.field_values import effort_said
from setwright.solver.desk.forms import Fields, many
from setwright.solver.desk.pages import go_to, page
from setwright.solver.desk.replan.said import LABELS, said_happened
from setwright.solver.desk.searches.found import client_of_search, ended_search
from setwright.solver.desk.stamp import asked_under
from setwright.solver.desk.weeks.dates import date_said
from setwright.solver.log.mondays import monday_of
from setwright.solver.records.happened_words import happened_of, why_words
from setwright.solver.records.week_at_hand import WeekAtHand, week_at_hand
from setwright.solver.sheets.common.words import day_name
from setwright.solver.sheets.document.week_model import SCHEMA
from setwright.solver.sheets.screen.addresses import address
from setwright.solver.uses.log.planned_day import planned_day, weekdays_of


def show(request: Request) -> Response:
    """The form for the week of a day, today's unless it is said; its JSON is the week's document."""
    desk = desk_of(request)
    with desk.book() as book:
        client = client_of(book, request.path_params["code"])
        day, week = _week(request, book, client, desk)
        logged = _logged(book, client, week, day)
    evaluated = week.audit.evaluated
    days = [
        {
            "word": d.weekday or str(d.index + 1),
            "name": day_name(d),
            "minutes": d.minutes,
            "missed": d.missed,
            "done": d.index in logged,
            "lines": [(address(evaluated, line), line.exercise.name) for line in evaluated.on[d.index]],
        }
        for d in evaluated.resolved.days
    ]
    catalogue = desk.catalogue
    more: dict[str, Any] = {
        "code": client.code,
        "day": day,
        "said": week.said,
        "days": days,
        "kits": [kit.name for kit in catalogue.kits.values()],
        "items": sorted(item.name for item in catalogue.items.values()),
        "muscles": [muscle.name for muscle in catalogue.muscles.values()],
        "exercises": sorted(exercise.name for exercise in catalogue.exercises.values()),
    }
    return page(request, "replan/happened.html", week.document, **more)


def replan(request: Request, fields: Fields) -> Response:
    """Begin the search for the week after what happened; raises UsageFault with every fault of the form."""
    desk, faults = desk_of(request), FaultCollector()
    with desk.book() as book:
        client = client_of(book, request.path_params["code"])
        day, week = _week(request, book, client, desk)
    said = said_happened(fields, many(request, "done"), many(request, "missed"), faults)
    happened_of(said, week.audit.evaluated.resolved, faults, LABELS.__getitem__)
    effort = faults.result_of(lambda: effort_said(fields))
    faults.raise_all()
    asked: dict[str, Any] = {"week": week.document, "brief": raw_of(week.parsed.brief), "fields": dict(fields)}
    asked |= {"done": list(many(request, "done")), "missed": list(many(request, "missed")), "search": effort}
    task = desk.task(
        "replan", **asked, starts=str(monday_of(day)), why=why_words(said), stamp=asked_under(request, fields)
    )
    return go_to(request, f"/searches/{desk.crew.ask(client.code, task).id}")


def keep(request: Request, fields: Fields) -> Response:
    """Keep the week that a search found, with why it was planned again; raises UsageFault where it found none."""
    desk = desk_of(request)
    search = ended_search(desk, fields)
    document = search.told.document
    if document is None or document.get("schema") != SCHEMA or search.task.name != "replan":
        raise UsageFault(Fault("week", "there is none to keep", "say what happened first"))
    monday = date.fromisoformat(search.task.arguments["starts"])
    with desk.book() as book:
        client = client_of_search(book, request, search)
        kept = {**document, "replan": {k: v for k, v in document["replan"].items() if k != "words"}}
        keep_week(book, client, monday, kept, search.task.arguments["why"])
    return go_to(request, f"/clients/{client.code}/weeks/{monday}")


def _week(request: Request, book: Book, client: Client, desk: Desk) -> tuple[date, WeekAtHand]:
    """The day that the address names, today's unless it does, and its week; raises UsageFault where there is none."""
    said = request.query_params.get("on", "")
    day = date_said(said, "on") if said else today()
    found = week_at_hand(book, client, desk.catalogue, day)
    if found is None:
        raise UsageFault(Fault("week", f"none is planned for {day}", "plan a block, or find a week and keep it"))
    return day, found


def _logged(book: Book, client: Client, week: WeekAtHand, day: date) -> set[int | None]:
    """The sessions of the week that are in the log."""
    held = [s for s in sessions_of(book, client) if monday_of(s.on) == monday_of(day)]
    return {planned_day(s, week.audit.evaluated.week, weekdays_of(week.audit)) for s in held}
