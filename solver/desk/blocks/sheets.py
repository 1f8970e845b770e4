"""The sheets of a block's weeks, and of a week with the loads from the log, as one file to take away."""

from __future__ import annotations

from starlette.requests import Request
from starlette.responses import Response

from setwright.catalogue.faults import Fault, UsageFault
from setwright.solver.book.clients import client_of
from setwright.solver.desk.archive import archive
from setwright.solver.desk.blocks.show import day_asked
from setwright.solver.desk.desk import desk_of
from setwright.solver.records.kept_blocks import block_at
from setwright.solver.records.letterhead import coach_beside
from setwright.solver.records.next_week import next_week_of
from setwright.solver.sheets.blocks.files import block_sheets, next_week_sheets
from setwright.solver.sheets.formats import FORMATS


def block_files(request: Request) -> Response:
    """Every week's sheets in the formats asked for, as one ZIP archive; raises SetwrightError, UsageFault."""
    desk, formats, day = desk_of(request), formats_asked(request), day_asked(request)
    with desk.book() as book:
        block = block_at(book, client_of(book, request.path_params["code"]), day, desk.catalogue)
    return archive(
        block_sheets(block, formats, coach_beside(desk.place, desk.catalogue)), f"block-{block.weeks[0].starts}"
    )


def next_files(request: Request) -> Response:
    """The sheets of the week of a day, its cards with the loads from the log."""
    desk, formats, day = desk_of(request), formats_asked(request), day_asked(request)
    with desk.book() as book:
        client = client_of(book, request.path_params["code"])
        block, found = next_week_of(book, client, desk.catalogue, day)
    sheets = next_week_sheets(block, found, formats, coach_beside(desk.place, desk.catalogue))
    return archive(sheets, f"week-{found.week.starts}")


def formats_asked(request: Request) -> tuple[str, ...]:
    """The formats that an address asks for with ?as=; PDF where it says none. Raises UsageFault."""
    asked = tuple(dict.fromkeys(request.query_params.getlist("as"))) or ("pdf",)
    if unknown := [name for name in asked if name not in FORMATS]:
        raise UsageFault(Fault("as", f"got {unknown[0]!r}, expected {', '.join(FORMATS)}"))
    return asked
