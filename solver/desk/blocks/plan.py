"""The search for a client's block, and the act that keeps what it made."""

from __future__ import annotations

from datetime import date

from starlette.requests import Request
from starlette.responses import Response

from setwright.catalogue.faults import Fault, UsageFault
from setwright.solver.book.clients import Client, brief_of, client_of
from setwright.solver.book.opened import Book
from setwright.solver.book.planned import block_on, keep_block
from setwright.solver.desk.blocks.ask_form import block_ask_of
from setwright.solver.desk.clock import today
from setwright.solver.desk.desk import desk_of
from setwright.solver.desk.field_values import effort_said
from setwright.solver.desk.forms import Fields
from setwright.solver.desk.pages import go_to
from setwright.solver.desk.searches.found import client_of_search, ended_search
from setwright.solver.log.mondays import coming_monday
from setwright.solver.sheets.document.blocks.block_document import ask_part
from setwright.solver.sheets.document.blocks.block_model import SCHEMA
from setwright.solver.uses.blocks.ask import WEEK
from setwright.solver.uses.blocks.ask_faults import checked


def plan(request: Request, fields: Fields) -> Response:
    """Begin the search for a block of a client's newest brief; raises UsageFault with every fault of the form."""
    desk = desk_of(request)
    with desk.book() as book:
        client = client_of(book, request.path_params["code"])
        raw, starts = brief_of(book, client), next_start(book, client)
    ask = checked(block_ask_of(fields, starts), desk.catalogue)
    effort = effort_said(fields)
    asked = ask_part(ask, desk.catalogue.defaults.block.lighter_every)
    search = desk.crew.ask(client.code, desk.task("block", brief=raw, ask=asked, search=effort))
    return go_to(request, f"/searches/{search.id}")


def keep(request: Request, fields: Fields) -> Response:
    """Keep the block that a search made; raises UsageFault where it made none."""
    desk = desk_of(request)
    search = ended_search(desk, fields, "block")
    document = search.told.document
    if document is None or document.get("schema") != SCHEMA:
        raise UsageFault(Fault("block", "there is none to keep", "plan one first"))
    with desk.book() as book:
        client = client_of_search(book, request, search, "block")
        first, last = (date.fromisoformat(document["weeks"][at][end]) for at, end in ((0, "starts"), (-1, "ends")))
        keep_block(book, client, first, last, document)
    return go_to(request, f"/clients/{client.code}/block?on={first}")


def next_start(book: Book, client: Client) -> date:
    """The Monday on which a client's next block begins: after the block at hand, else the coming one."""
    monday = coming_monday(today())
    held = block_on(book, client, today())
    after = None if held is None else held.starts + ((held.ends - held.starts) // WEEK + 1) * WEEK
    return monday if after is None else max(monday, after)
