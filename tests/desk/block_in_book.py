"""A client with a block that no search was needed for: two short sessions a week, written by hand."""

from __future__ import annotations

from datetime import date

from setwright.solver.book.clients import add_client, client_of
from setwright.solver.book.planned import keep_block
from setwright.solver.brief.parsed_brief import parse_brief, raw_of
from setwright.solver.desk.desk import Desk
from setwright.solver.foreign.foreign_week import read_any
from setwright.solver.rulebook import RULES
from setwright.solver.sheets.document.blocks.block_document import block_document
from setwright.solver.uses.blocks.ask import BlockAsk, Span
from setwright.solver.uses.blocks.block import Block
from setwright.solver.uses.blocks.planning import plan_block

MONDAY = date(2026, 1, 5)
TABLE = (
    "day,exercise,sets,reps,RIR,rest\n"
    "mon,Barbell bench press,3,6-10,2,120\n"
    "mon,Chest-supported dumbbell row,3,8-12,1,90\n"
    "thu,Barbell back squat,3,6-8,2,120\n"
    "thu,Seated leg curl,3,10-15,1,60\n"
)
CLIENT = {"age": 41, "experience": "intermediate"}
RAW = {
    "days": [{"weekday": day, "minutes": 40} for day in ("mon", "thu")],
}


def block_in_book(desk: Desk, weeks: int = 3, code: str = "M") -> Block:
    """The block of a client as it was kept: build weeks, then one off; their age is for no page."""
    parsed = parse_brief({**RAW, "client": {**CLIENT, "code": code}}, desk.catalogue, "test", tuple(RULES))
    week = read_any(TABLE.encode(), "test", desk.catalogue, parsed).week
    off = Span(date(2026, 1, 19), date(2026, 1, 25))
    ask = BlockAsk(weeks, MONDAY, lighter_every=0, off=(off,) if weeks == 3 else ())
    block = plan_block(parsed, desk.catalogue, ask, base=week)
    assert isinstance(block, Block)
    with desk.book() as book:
        if not book.rows("SELECT 1 FROM client WHERE code = ?", code):
            add_client(book, code, raw_of(parsed.brief))
        last = block.weeks[-1].place.ends
        assert last is not None
        keep_block(book, client_of(book, code), MONDAY, last, block_document(block))
    return block
