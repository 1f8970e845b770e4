"""The blocks of a client as the book keeps them, read back with the client's health notes."""

from __future__ import annotations

from collections.abc import Mapping
from datetime import date
from typing import Any

from setwright.catalogue.entries import Catalogue
from setwright.catalogue.faults import Fault, UsageFault
from setwright.solver.book.clients import Client, health_of
from setwright.solver.book.opened import Book
from setwright.solver.book.planned import KeptBlock, block_on, blocks
from setwright.solver.sheets.document.blocks.block_reader import read_block
from setwright.solver.uses.blocks.block import Block, BlockWeek


def blocks_of(book: Book, client: Client, catalogue: Catalogue) -> dict[int, Block]:
    """Row -> block of each block that holds, in the order of their first days."""
    return {kept.id: read_kept(book, client, kept.document, catalogue) for kept in blocks(book, client)}


def block_at(book: Book, client: Client, day: date, catalogue: Catalogue) -> Block:
    """The block that a day stands in, else the newest; raises UsageFault where there is none."""
    return read_kept(book, client, kept_at(book, client, day).document, catalogue)


def kept_at(book: Book, client: Client, day: date) -> KeptBlock:
    """The same as it is kept."""
    kept = block_on(book, client, day)
    if kept is None:
        remedy = f"`setwright block plan @{client.code}` plans one"
        raise UsageFault(Fault(f"@{client.code}", "has no block in the book", remedy, "plan one on its page Block"))
    return kept


def read_kept(book: Book, client: Client, document: Mapping[str, Any], catalogue: Catalogue) -> Block:
    """A block's document as a block, its weeks audited with the client's health notes."""
    return read_block(_with_health(document, health_of(book, client)), catalogue, f"@{client.code}: block")


def week_on(block: Block, day: date) -> BlockWeek | None:
    """The block's week that a day stands in; None where the block does not reach it."""
    return next((week for week in block.weeks if week.place.holds(day)), None)


def _with_health(document: Mapping[str, Any], health: Mapping[str, Any]) -> dict[str, Any]:
    """A block's document with the health notes in each of its briefs."""

    def noted(brief: Mapping[str, Any] | None) -> dict[str, Any] | None:
        return None if brief is None else {**brief, "client": {**brief.get("client", {}), **health}}

    weeks = [{**week, "brief": noted(week["brief"])} for week in document["weeks"]]
    return {**document, "brief": noted(document["brief"]), "weeks": weeks}
