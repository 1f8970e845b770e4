"""What a client does next: loads with one sentence why each, what was done of the plan, which lifts stand still."""

from __future__ import annotations

from itertools import groupby
from typing import Any

from starlette.requests import Request
from starlette.responses import Response

from setwright.solver.book.clients import client_of
from setwright.solver.desk.blocks.show import day_asked
from setwright.solver.desk.desk import desk_of
from setwright.solver.desk.pages import page
from setwright.solver.records.next_week import next_week_of
from setwright.solver.sheets.common.words import day_name
from setwright.solver.sheets.document.progress.next_week_document import next_week_document
from setwright.solver.sheets.formats import FORMATS
from setwright.solver.sheets.screen.progress.done_table import HEADINGS, WHAT_COLUMNS_ARE, WHAT_SETS_ARE, session_row
from setwright.solver.sheets.screen.progress.next_table import next_notes, next_row
from setwright.solver.sheets.screen.progress.next_week import drawn_maxima
from setwright.solver.sheets.screen.progress.stall_words import stall_note, stall_words
from setwright.solver.uses.progress.next_week import NextWeek


def show_next(request: Request) -> Response:
    """How to go on in the week of a day; raises UsageFault outside a block and in a week off."""
    desk = desk_of(request)
    with desk.book() as book:
        client = client_of(book, request.path_params["code"])
        _, found = next_week_of(book, client, desk.catalogue, day_asked(request))
    more = {"code": client.code, "formats": tuple(FORMATS), "week": found.week, **_words(found)}
    return page(request, "blocks/next.html", next_week_document(found), **more)


def _words(found: NextWeek) -> dict[str, Any]:
    """The document's values in the words of the command."""
    resolved = found.evaluated.resolved
    catalogue, unit = resolved.catalogue, resolved.brief.client.unit
    names = catalogue.muscles
    return {
        "days": [
            (
                day_name(resolved.days[day]),
                [next_row(target, catalogue.exercises[target.exercise]) for target in targets],
            )
            for day, targets in groupby(found.targets, key=lambda target: target.day)
        ],
        "notes": list(next_notes(found.targets, catalogue)),
        "done_heads": HEADINGS,
        "done": [session_row(one, found.evaluated, unit) for one in found.done],
        "done_note": WHAT_COLUMNS_ARE,
        "muscles": [(names[one.muscle].name, f"{one.sets:g}", f"{one.planned_sets:g}") for one in found.muscles],
        "muscles_note": WHAT_SETS_ARE,
        "muscles_week": found.muscles[0].week if found.muscles else None,
        "stalls": [stall_words(stall, catalogue, unit) for stall in found.stalls],
        "stall_note": stall_note(catalogue),
        "plots": list(drawn_maxima(found).values()),
    }
