"""What a client of the book does next: the week of the block that a day stands in, gone on with from the log."""

from __future__ import annotations

from datetime import date

from setwright.catalogue.entries import Catalogue
from setwright.catalogue.faults import Fault, UsageFault
from setwright.solver.book.clients import Client
from setwright.solver.book.opened import Book
from setwright.solver.book.sessions import sessions_of
from setwright.solver.records.kept_blocks import blocks_of, kept_at, week_on
from setwright.solver.records.week_at_hand import as_it_stands
from setwright.solver.uses.blocks.block import Block, BlockWeek
from setwright.solver.uses.progress.next_week import NextWeek, next_week


def next_week_of(book: Book, client: Client, catalogue: Catalogue, day: date) -> tuple[Block, NextWeek]:
    """The block of a day and how to go on in its week; raises UsageFault outside a block and in a week off."""
    blocks = blocks_of(book, client, catalogue)
    block = blocks[kept_at(book, client, day).id]
    week = as_it_stands(book, client, _week_of(block, day, client.code), catalogue)
    return block, next_week(week, tuple(blocks.values()), sessions_of(book, client), day)


def _week_of(block: Block, day: date, code: str) -> BlockWeek:
    """The week that a day stands in; raises UsageFault outside the block and in a week off."""
    week = week_on(block, day)
    if week is None:
        said = f"{day.isoformat()} lies outside the block, {block.weeks[0].starts} to {block.weeks[-1].place.ends}"
        raise UsageFault(
            Fault(
                f"@{code}",
                said,
                "name a day of it (--on), or plan the next block",
                "choose a day of it, or plan the next block",
            )
        )
    if week.evaluated is None:
        raise UsageFault(
            Fault(
                f"@{code}",
                f"week {week.number} is off",
                "name a day of another week (--on)",
                "choose a day of another week",
            )
        )
    return week
