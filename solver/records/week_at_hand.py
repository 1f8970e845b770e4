"""The week of a client at hand: as it was kept last, else as the block has it."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, replace
from datetime import date
from typing import Any

from setwright.catalogue.entries import Catalogue
from setwright.solver.auditing import Audit, audit
from setwright.solver.book.clients import Client, health_of
from setwright.solver.book.opened import Book
from setwright.solver.book.planned import blocks, week_starting
from setwright.solver.brief.parsed_brief import ParsedBrief
from setwright.solver.log.mondays import monday_of
from setwright.solver.records.kept_blocks import read_kept, week_on
from setwright.solver.records.resolved_once import resolved_once
from setwright.solver.sheets.document.changed_week import changed_week_document
from setwright.solver.sheets.document.week_reader import read_week
from setwright.solver.uses.blocks.block import BlockWeek
from setwright.solver.uses.blocks.week_targets import with_targets


@dataclass(frozen=True)
class WeekAtHand:
    """The brief and audit of a week, made with the client's health notes, and its document without them."""

    parsed: ParsedBrief
    audit: Audit
    document: dict[str, Any]
    starts: date | None
    said: str
    """Where it comes from: the reason why it was kept, or its place in the block."""


def week_at_hand(book: Book, client: Client, catalogue: Catalogue, day: date) -> WeekAtHand | None:
    """The week that a day stands in; None where none is planned."""
    kept = week_starting(book, client, monday_of(day))
    if kept is not None:
        found = read_kept_week(book, client, kept.document, catalogue)
        return replace(found, starts=kept.starts, said=f"the week of {kept.starts}, {kept.why or 'as it was kept'}")
    for held in (block for block in reversed(blocks(book, client)) if block.starts <= day <= block.ends):
        week = week_on(read_kept(book, client, held.document, catalogue), day)
        if week is not None and week.parsed is not None and week.audit is not None:
            said = f"week {week.number} of the block, from {week.starts}"
            document = changed_week_document({}, week.parsed, week.audit)
            return WeekAtHand(week.parsed, week.audit, document, week.starts, said)
    return None


def as_it_stands(book: Book, client: Client, week: BlockWeek, catalogue: Catalogue) -> BlockWeek:
    """A block's week as it was replanned last, with its lines' targets; the week itself where it was not."""
    kept = None if week.starts is None else week_starting(book, client, week.starts)
    if kept is None:
        return week
    found = read_kept_week(book, client, kept.document, catalogue)
    return with_targets([replace(week, parsed=found.parsed, audit=found.audit)])[0]


def read_kept_week(book: Book, client: Client, document: Mapping[str, Any], catalogue: Catalogue) -> WeekAtHand:
    """A kept week's document read back and audited with the client's health notes."""
    brief = document["brief"]
    noted = {**brief, "client": {**brief.get("client", {}), **health_of(book, client)}}
    parsed, week = read_week({**document, "brief": noted}, catalogue, f"@{client.code}: week")
    return WeekAtHand(parsed, audit(resolved_once(parsed.brief, catalogue), week), dict(document), None, "")
