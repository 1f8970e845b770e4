"""The week of a client at hand: as it was kept last, else as the block has it."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace
from datetime import date, timedelta
from typing import TYPE_CHECKING, Any

from setwright.solver.cli.blocks.kept_block import read_kept, week_on
from setwright.solver.cli.books import MARK, the_book
from setwright.solver.cli.console.messages import say

if TYPE_CHECKING:
    from setwright.catalogue.entries import Catalogue
    from setwright.solver.auditing import Audit
    from setwright.solver.book.clients import Client
    from setwright.solver.book.opened import Book
    from setwright.solver.brief.parsed_brief import ParsedBrief
    from setwright.solver.uses.blocks.block import BlockWeek

Found = tuple["ParsedBrief", "Audit", dict[str, Any]]


def monday_of(day: date) -> date:
    """The Monday of a day's week."""
    return day - timedelta(days=day.weekday())


def week_at_hand(code: str, catalogue: Catalogue, day: date) -> Found | None:
    """(brief, audit, document without health notes) of the week that a day stands in; None where none is planned.

    The audit is made with the client's health notes. Raises UsageFault for an unknown code.
    """
    from setwright.solver.book.clients import client_of
    from setwright.solver.book.planned import blocks, week_starting

    with the_book() as book:
        client = client_of(book, code)
        kept = week_starting(book, client, monday_of(day))
        if kept is not None:
            say(f"{MARK}{client.code}: the week of {kept.starts}, {kept.why or 'as it was kept'}")
            return _read(book, client, kept.document, catalogue)
        for found in (block for block in reversed(blocks(book, client)) if block.starts <= day <= block.ends):
            week = week_on(read_kept(book, client, found.document, catalogue), day)
            if week is not None and week.parsed is not None and week.audit is not None:
                say(f"{MARK}{client.code}: week {week.number} of the block, from {week.starts}")
                return week.parsed, week.audit, _document(week.parsed, week.audit)
    return None


def as_it_stands(book: Book, client: Client, week: BlockWeek, catalogue: Catalogue) -> BlockWeek:
    """A block's week as it was replanned last, with its lines' targets; the week itself where it was not."""
    from setwright.solver.book.planned import week_starting
    from setwright.solver.uses.blocks.week_targets import with_targets

    kept = None if week.starts is None else week_starting(book, client, week.starts)
    if kept is None:
        return week
    parsed, audit, _ = _read(book, client, kept.document, catalogue)
    return with_targets([replace(week, parsed=parsed, audit=audit)])[0]


def keep_week_at_hand(code: str, day: date, document: Mapping[str, Any], why: str) -> None:
    """Keep a week in the place of the one at hand, with the reason; what stood there stays in the book."""
    from setwright.solver.book.clients import client_of
    from setwright.solver.book.planned import keep_week

    with the_book() as book:
        client = client_of(book, code)
        keep_week(book, client, monday_of(day), document, why)
    say(f"written down for {MARK}{client.code}: the week of {monday_of(day)}, {why}")


def _read(book: Book, client: Client, document: Mapping[str, Any], catalogue: Catalogue) -> Found:
    from setwright.solver.auditing import audit
    from setwright.solver.book.clients import health_of
    from setwright.solver.rulebook import resolve
    from setwright.solver.sheets.document.week_reader import read_week

    brief = document["brief"]
    noted = {**brief, "client": {**brief.get("client", {}), **health_of(book, client)}}
    parsed, week = read_week({**document, "brief": noted}, catalogue, f"{MARK}{client.code}: week")
    return parsed, audit(resolve(parsed.brief, catalogue), week), dict(document)


def _document(parsed: ParsedBrief, audit: Audit) -> dict[str, Any]:
    from setwright.solver.sheets.document.changed_week import changed_week_document

    return changed_week_document({}, parsed, audit)
