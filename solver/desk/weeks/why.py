"""Why a week is as it is: its reasons at once, and the questions that are solved anew."""

from __future__ import annotations

from starlette.requests import Request
from starlette.responses import Response

from setwright.catalogue.faults import Fault, UsageFault
from setwright.solver.book.clients import brief_of, client_of
from setwright.solver.brief.lifts.named import exercise_named
from setwright.solver.desk.desk import Desk, desk_of
from setwright.solver.desk.field_values import effort_said, whole_said
from setwright.solver.desk.forms import Fields
from setwright.solver.desk.pages import go_to, page
from setwright.solver.desk.weeks.kept import monday_in, week_of
from setwright.solver.records.efforts import limits_of
from setwright.solver.records.week_at_hand import WeekAtHand
from setwright.solver.sheets.handout.handout import private_document
from setwright.solver.sheets.screen.addresses import line_at
from setwright.solver.sheets.screen.explain.why import why_document
from setwright.solver.uses.explain.reasons import reason_of

QUESTIONS = ("below", "without", "with", "minutes")
MOST_OTHERS = 9
MOST_MINUTES = 120


def show(request: Request) -> Response:
    """Each line's reason, by the audit of the week without it."""
    week = week_of(request)
    document = why_document(week.audit, tuple(reason_of(week.audit, line) for line in week.audit.evaluated.lines), None)
    names = {line.exercise.id: line.exercise.name for line in week.audit.evaluated.lines}
    more = {"names": names, "code": request.path_params["code"], "monday": monday_in(request)}
    return page(request, "weeks/why.html", document, **more)


def ask(request: Request, fields: Fields) -> Response:
    """Begin to solve a question; raises UsageFault where its value is none."""
    desk, week = desk_of(request), week_of(request)
    question, value = fields.get("question", ""), fields.get("value", "").strip()
    effort = effort_said(fields) if fields.get("search") else limits_of(None, week.document).name
    if question not in QUESTIONS:
        raise UsageFault(Fault("question", f"got {question!r}, expected one of {', '.join(QUESTIONS)}"))
    _check(question, value, week, desk)
    document = private_document(week.document, week.parsed.brief)
    what = {"document": document, "question": question, "value": value, "search": effort}
    with desk.book() as book:
        client = client_of(book, request.path_params["code"])
    more = {"monday": monday_in(request).isoformat()}
    search = desk.crew.ask(client.code, desk.task("question", **what, **more))
    return go_to(request, f"/searches/{search.id}")


def others(request: Request, fields: Fields) -> Response:
    """Begin the search for other weeks that are nearly as good."""
    desk = desk_of(request)
    effort, count = effort_said(fields), whole_said(fields.get("count", ""), "count", (1, MOST_OTHERS), 3)
    with desk.book() as book:
        client = client_of(book, request.path_params["code"])
        raw = brief_of(book, client)
    task = desk.task("others", brief=raw, count=count, search=effort)
    return go_to(request, f"/searches/{desk.crew.ask(client.code, task).id}")


def _check(question: str, value: str, week: WeekAtHand, desk: Desk) -> None:
    """Raise UsageFault where a question's value names nothing, before a process is asked."""
    if question == "without":
        line_at(week.audit.evaluated, value)
    if question == "with":
        exercise_named(value, desk.catalogue)
    if question == "minutes":
        whole_said(value, "minutes", (1, MOST_MINUTES))
