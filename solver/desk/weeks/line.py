"""One line of a week: what may be done with it, and the act that does it."""

from __future__ import annotations

from dataclasses import replace
from typing import Any

from starlette.requests import Request
from starlette.responses import Response

from setwright.catalogue.faults import SetwrightError
from setwright.solver.book.clients import Client, brief_of, client_of, keep_brief
from setwright.solver.book.opened import Book
from setwright.solver.book.planned import keep_week
from setwright.solver.brief.parsed_brief import parse_brief, raw_of
from setwright.solver.desk.desk import Desk, desk_of
from setwright.solver.desk.forms import Fields
from setwright.solver.desk.pages import go_to, page, wants_json
from setwright.solver.desk.searches.task import told_of
from setwright.solver.desk.stamp import FIELD, asked_under, go_on_under
from setwright.solver.desk.weeks.kept import monday_in, shown, week_document_of, week_of
from setwright.solver.records.week_at_hand import WeekAtHand
from setwright.solver.rulebook import RULES
from setwright.solver.sheets.document.changed_week import changed_week_document
from setwright.solver.sheets.handout.handout import private_document
from setwright.solver.sheets.screen.addresses import line_at
from setwright.solver.sheets.screen.edits.coach_edits import CoachEdit, brief_edits, edit_asked, refuse_breaking
from setwright.solver.sheets.screen.edits.edited_week import edit_document, edited_week_document
from setwright.solver.sheets.screen.edits.line_choices import line_document, line_key


def show(request: Request) -> Response:
    """What may be done with a line: swaps with what each changes, sets, days, pins.

    Opened inside a page, it acts under the stamp of that page, which it is sent.
    """
    if stamp := request.query_params.get(FIELD):
        go_on_under(request, stamp)
    week = week_of(request)
    document = line_document(week.audit, line_at(week.audit.evaluated, request.query_params.get("entry", "")))
    template = "weeks/line_choices.html" if request.headers.get("hx-request") else "weeks/line.html"
    return page(request, template, document, code=request.path_params["code"], monday=monday_in(request))


def edit(request: Request, fields: Fields) -> Response:
    """A line changed and the week kept as it is then, with the reason; 422 with every rule that it would break.

    `settle` begins a search that solves the sets anew around the change instead.
    """
    desk, week = desk_of(request), week_of(request)
    line = line_at(week.audit.evaluated, fields.get("entry", ""))
    asked = edit_asked(week.audit, line, fields.get("act", ""), fields.get("value", ""))
    if fields.get("settle"):
        return _settle(request, fields, week, asked)
    try:
        refuse_breaking(asked)
    except SetwrightError as error:
        return _refusal(request, fields, asked, error)
    document = edited_week_document(week.document, week.parsed, asked.effect)
    with desk.book() as book:
        client = client_of(book, request.path_params["code"])
        with book.writing():
            _change_brief(book, client, desk, asked, fields.get("act", ""))
            keep_week(book, client, monday_in(request), document, asked.said)
    return _answer(request, desk, _now(week, asked, document), asked)


# ---- what follows


def _change_brief(book: Book, client: Client, desk: Desk, asked: CoachEdit, act: str) -> None:
    """A new version of the client's brief where an act is about it; raises UsageFault."""
    change = brief_edits(asked, act)
    if change is not None:
        parsed = parse_brief(brief_of(book, client), desk.catalogue, f"@{client.code}", tuple(RULES))
        raw = raw_of(change(parsed.brief))
        parse_brief(raw, desk.catalogue, f"@{client.code}", tuple(RULES))
        keep_brief(book, client, raw, asked.said)


def _now(week: WeekAtHand, asked: CoachEdit, document: dict[str, Any]) -> WeekAtHand:
    """The week as it is after a change."""
    after = asked.effect.after
    parsed = replace(week.parsed, brief=after.evaluated.resolved.brief)
    return replace(week, parsed=parsed, audit=after, document=document, said=asked.said)


def _answer(request: Request, desk: Desk, week: WeekAtHand, asked: CoachEdit) -> Response:
    """The week as it is now with what the change did, for a program or for the part of the page that shows it."""
    if not wants_json(request) and not request.headers.get("hx-request"):
        return go_to(request, f"/clients/{request.path_params['code']}/weeks/{monday_in(request)}")
    document = week_document_of(week, edit_document(asked.said, asked.effect))
    more = {**shown(desk, week, request), "changed": _focused(asked), "changed_day": _changed_day(asked)}
    return page(request, "weeks/week.html", document, **more)


def _changed_day(asked: CoachEdit) -> int:
    """The day at which is said what a change did."""
    return asked.kept[0][0] if asked.kept else asked.line.day.index


def _focused(asked: CoachEdit) -> str:
    """What the keyboard goes on from where the button that was pressed is gone: the line, or its day's heading."""
    lines = asked.effect.after.evaluated.on[_changed_day(asked)]
    names = [exercise for _, exercise in asked.kept] or [asked.line.exercise.id]
    there = next((line for line in lines if line.exercise.id == names[0]), None)
    return line_key(there) if there else f"day-{asked.line.day.index + 1}"


def _refusal(request: Request, fields: Fields, asked: CoachEdit, error: SetwrightError) -> Response:
    """Every rule that a change would break, and the way to have the sets solved anew around it."""
    go_on_under(request, asked_under(request, fields))
    fragment = request.headers.get("hx-request") is not None
    document = {"faults": [told_of(fault) for fault in error.faults], "said": asked.said}
    template = "weeks/refused_part.html" if fragment else "weeks/refused.html"
    more = {"fields": fields, "code": request.path_params["code"], "monday": monday_in(request)}
    return page(request, template, document, 422, can_settle=bool(asked.kept), **more)


def _settle(request: Request, fields: Fields, week: WeekAtHand, asked: CoachEdit) -> Response:
    """The search begun that solves sets anew around a change; what it finds is kept under the stamp of now."""
    desk, after, monday = desk_of(request), asked.effect.after, monday_in(request)
    parsed = replace(week.parsed, brief=after.evaluated.resolved.brief)
    document = private_document(changed_week_document({}, parsed, after, swaps={}), parsed.brief)
    kept = [list(place) for place in asked.kept]
    what = {
        "document": document,
        "before": week.document,
        "kept": kept,
        "sets": asked.sets,
        "why": asked.said,
        "starts": str(monday),
        FIELD: asked_under(request, fields),
    }
    with desk.book() as book:
        client = client_of(book, request.path_params["code"])
    search = desk.crew.ask(client.code, desk.task("settle", **what))
    return go_to(request, f"/searches/{search.id}")
