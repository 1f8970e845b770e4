"""The sheets of a kept week: the client's page to look at and print, and every format to download."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from datetime import date
from types import MappingProxyType
from typing import Any, Final

from starlette.requests import Request
from starlette.responses import Response

from setwright.catalogue.faults import Fault, SetwrightError, UsageFault
from setwright.solver.desk.desk import desk_of
from setwright.solver.desk.field_values import whole_said
from setwright.solver.desk.pages import page
from setwright.solver.desk.searches.task import told_of
from setwright.solver.desk.weeks.dates import date_said
from setwright.solver.desk.weeks.kept import monday_in, week_of
from setwright.solver.records.letterhead import NAME, coach_beside
from setwright.solver.sheets.formats import FORMATS, file_name, written
from setwright.solver.sheets.handout.coach import Coach, overlaid
from setwright.solver.sheets.handout.handout import handout_of, private_document
from setwright.solver.sheets.handout.values import Handout
from setwright.solver.uses.blocks.ask import MOST_WEEKS

SCHEMA: Final = "setwright.sheets/1"
PAPERS: Final = ("a4", "letter")
NAMES: Final[Mapping[str, str]] = MappingProxyType(
    {
        "pdf": "card to print",
        "xlsx": "workbook to fill in",
        "ics": "calendar",
        "html": "page",
        "csv": "table",
        "md": "text",
        "json": "for programs",
    }
)
OWN_POLICY: Final = (
    "default-src 'none'; style-src 'unsafe-inline'; img-src data:; font-src data:; base-uri 'none'; "
    "form-action 'none'; frame-ancestors 'self'"
)
"""What a client's page may load: its own inline style, and nothing else."""


@dataclass(frozen=True)
class Asked:
    """What a form or an address asks of the sheets, laid over the coach's own file."""

    start: date
    coach: Coach


def show(request: Request) -> Response:
    """The client's page in a frame, and a link for each format; what holds the sheets back where something does."""
    asked = _asked(request)
    document: dict[str, Any] = {
        "schema": SCHEMA,
        "client": request.path_params["code"],
        "starts": monday_in(request).isoformat(),
        "start": asked.start.isoformat(),
        "paper": asked.coach.paper,
        "weeks": asked.coach.weeks,
        "letterhead": asked.coach.name,
        "formats": [{"format": name, "words": NAMES[name]} for name in FORMATS],
        "faults": [],
    }
    try:
        _handout(request, asked)
    except UsageFault:
        raise
    except SetwrightError as error:
        document["faults"] = [told_of(fault) for fault in error.faults]
    more = {"code": request.path_params["code"], "monday": monday_in(request), "papers": PAPERS, "coach_file": NAME}
    return page(request, "weeks/sheets.html", document, **more)


def show_page(request: Request) -> Response:
    """The page that the client is handed, under its own policy."""
    data = written("html", _handout(request, _asked(request)))
    return Response(data, headers={"Content-Security-Policy": OWN_POLICY}, media_type=FORMATS["html"].media)


def download(request: Request) -> Response:
    """One format as a file; its name is the client's code and the week."""
    name = request.path_params["format"]
    if name not in FORMATS:
        raise UsageFault(Fault("format", f"got {name!r}, expected one of {', '.join(FORMATS)}"))
    handout = _handout(request, _asked(request))
    headers = {"Content-Disposition": f'attachment; filename="{file_name(name, handout)}"'}
    if name == "html":
        headers["Content-Security-Policy"] = OWN_POLICY
    return Response(written(name, handout), headers=headers, media_type=FORMATS[name].media)


def _asked(request: Request) -> Asked:
    """What an address asks for; raises UsageFault with every fault."""
    query, desk = request.query_params, desk_of(request)
    faults: list[Fault] = []
    paper, weeks = query.get("paper") or None, query.get("weeks") or None
    if paper is not None and paper not in PAPERS:
        faults.append(Fault("paper", f"got {paper!r}, expected {' or '.join(PAPERS)}"))
    count = None
    try:
        count = None if weeks is None else whole_said(weeks, "weeks", (1, MOST_WEEKS))
    except UsageFault as error:
        faults += error.faults
    try:
        start = date_said(query["start"], "start") if query.get("start") else monday_in(request)
    except UsageFault as error:
        faults += error.faults
    if faults:
        raise UsageFault(faults)
    coach = coach_beside(desk.place, desk.catalogue)
    options = {"start": start, "paper": paper, "weeks": count}
    return Asked(start, overlaid(coach, options))


def _handout(request: Request, asked: Asked) -> Handout:
    """What the client is handed; raises SetwrightError while a clearance is missing."""
    week = week_of(request)
    document = private_document(week.document, week.parsed.brief)
    return handout_of(document, desk_of(request).catalogue, asked.coach, asked.start, "sheets")
