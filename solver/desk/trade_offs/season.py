"""A season: the form with its calendar, and the act that begins to lay it out."""

from __future__ import annotations

import csv
import io
from collections.abc import Callable
from typing import Any, Final, TypeVar

from starlette.requests import Request
from starlette.responses import Response

from setwright.catalogue.faults import Fault, SetwrightError, UsageFault
from setwright.solver.book.clients import brief_of, client_of
from setwright.solver.brief.parsed_brief import parse_brief
from setwright.solver.desk.clock import today
from setwright.solver.desk.desk import desk_of
from setwright.solver.desk.field_values import whole_said
from setwright.solver.desk.forms import Fields, many
from setwright.solver.desk.pages import go_to, page
from setwright.solver.desk.trade_offs.asking import begun, form_document
from setwright.solver.desk.weeks.dates import date_said
from setwright.solver.foreign.season_calendar import COLUMNS, read_calendar
from setwright.solver.log.mondays import coming_monday
from setwright.solver.rulebook import RULES
from setwright.solver.uses.season.ranges import BLOCK_WEEKS, SEASON_WEEKS
from setwright.solver.uses.season.season_asked import season_asked

ROWS: Final = 6
"""Rows of the calendar that the form has."""
Found = TypeVar("Found")


def show(request: Request) -> Response:
    """What a season can be asked for."""
    desk = desk_of(request)
    defaults = desk.catalogue.defaults.season
    offered: dict[str, Any] = {
        "from": str(coming_monday(today())),
        "weeks": defaults.weeks,
        "weeks_limits": list(SEASON_WEEKS),
        "block_weeks": list(defaults.block_weeks),
        "block_weeks_limits": list(BLOCK_WEEKS),
        "calendar_rows": ROWS,
        "kits": [{"id": kit.id, "name": kit.name} for kit in desk.catalogue.kits.values()],
    }
    return page(request, "trade_offs/season.html", form_document(request, "season", **offered))


def ask(request: Request, fields: Fields) -> Response:
    """Begin to lay out a season; raises UsageFault with every fault of the form, before anything is searched."""
    desk, faults = desk_of(request), list[Fault]()

    def read(act: Callable[[], Found]) -> Found | None:
        try:
            return act()
        except SetwrightError as error:
            faults.extend(error.faults)
            return None

    usual = desk.catalogue.defaults.season
    start = read(lambda: date_said(fields.get("from", ""), "first day"))
    count = read(lambda: whole_said(fields.get("weeks", ""), "weeks", SEASON_WEEKS, usual.weeks))
    least = read(lambda: whole_said(fields.get("block-from", ""), "shortest block", BLOCK_WEEKS, usual.block_weeks[0]))
    most = read(lambda: whole_said(fields.get("block-to", ""), "longest block", BLOCK_WEEKS, usual.block_weeks[1]))
    if least and most and most < least:
        faults.append(Fault("blocks", f"{least} to {most} weeks does not rise", "put the shorter first"))
    calendar = _calendar(request)
    rows = read(lambda: read_calendar(calendar.encode(), "calendar", desk.catalogue)) if calendar else ()
    words = [word.strip() for word in fields.get("emphasis", "").split(",") if word.strip()]
    with desk.book() as book:
        raw = brief_of(book, client_of(book, request.path_params["code"]))
    if not faults and start and count and least and most and rows is not None:
        brief = parse_brief(raw, desk.catalogue, "brief", tuple(RULES)).brief
        read(lambda: season_asked(brief, start, count, (least, most), rows, words, desk.catalogue))
    if faults:
        raise UsageFault(faults)
    asked = {"start": str(start), "weeks": count, "block_weeks": [least, most], "calendar": calendar, "emphasis": words}
    return go_to(request, begun(request, "season", **asked))


def _calendar(request: Request) -> str:
    """The rows of the form as the CSV that a season's calendar is; empty where nothing is filled in."""
    columns = [many(request, f"calendar-{name}") for name in COLUMNS]
    rows = [[cell.strip() for cell in row] for row in zip(*columns, strict=False)]
    filled = [row for row in rows if any(row[:-1])]
    if not filled:
        return ""
    text = io.StringIO()
    csv.writer(text).writerows([list(COLUMNS), *filled])
    return text.getvalue()
