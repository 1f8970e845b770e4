"""A client's block as it was planned, and the form that plans one."""

from __future__ import annotations

from datetime import date
from typing import Any

from starlette.requests import Request
from starlette.responses import Response

from setwright.solver.book.clients import Client, client_of
from setwright.solver.book.opened import Book
from setwright.solver.book.planned import block_on, blocks
from setwright.solver.desk.blocks.ask_form import KINDS, ROWS
from setwright.solver.desk.blocks.grid import away_weeks, lift_rows, muscle_rows, same_weeks
from setwright.solver.desk.blocks.plan import next_start
from setwright.solver.desk.clock import today
from setwright.solver.desk.desk import Desk, desk_of
from setwright.solver.desk.pages import page, wants_json
from setwright.solver.desk.weeks.dates import date_said
from setwright.solver.records.kept_blocks import kept_at, read_kept
from setwright.solver.sheets.formats import FORMATS
from setwright.solver.sheets.screen.over_time.block_plot import drawn_block


def show(request: Request) -> Response:
    """The block of a day, today's unless it is said, else the newest; only the form where there is none."""
    desk, day = desk_of(request), day_asked(request)
    with desk.book() as book:
        client = client_of(book, request.path_params["code"])
        kept = block_on(book, client, day)
        if kept is None:
            if wants_json(request):
                kept_at(book, client, day)
            return page(request, "blocks/none.html", {}, **_form(desk, book, client))
        block = read_kept(book, client, kept.document, desk.catalogue)
        form = _form(desk, book, client)
    more: dict[str, Any] = {
        "kept": kept,
        "svg": drawn_block(block),
        "formats": tuple(FORMATS),
        "shows_today": kept.starts <= today() <= kept.ends,
    }
    return page(request, "blocks/block.html", kept.document, **more, **grid_parts(kept.document, desk), **form)


def grid_parts(document: Any, desk: Desk) -> dict[str, Any]:
    """A block's document laid out: what the page and the search's page draw alike."""
    same = same_weeks(document)
    return {
        "same": same,
        "rows": lift_rows(document, same, desk.catalogue),
        "away": [(week, lift_rows(document, [week], desk.catalogue)) for week in away_weeks(document)],
        "muscles": muscle_rows(document, desk.catalogue),
    }


def day_asked(request: Request) -> date:
    """The day that an address asks for with ?on=; today where it says none. Raises UsageFault."""
    said = request.query_params.get("on", "")
    return date_said(said, "on") if said else today()


def _form(desk: Desk, book: Book, client: Client) -> dict[str, Any]:
    """What the form offers: its first Monday, the kinds of days, the places by name, the usual lighter week."""
    names = [kit.name for kit in desk.catalogue.kits.values()] + [item.name for item in desk.catalogue.items.values()]
    return {
        "code": client.code,
        "starts": next_start(book, client),
        "kinds": KINDS,
        "rows_given": range(ROWS),
        "places": sorted(set(names)),
        "lighter_every": desk.catalogue.defaults.block.lighter_every,
        "all_blocks": [(kept.starts, kept.ends) for kept in blocks(book, client)],
    }
