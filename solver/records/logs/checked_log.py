"""A client's log held against the block's weeks as they stand: slips, what is unlike them, and what is missing."""

from __future__ import annotations

from datetime import date

from setwright.catalogue.entries import Catalogue
from setwright.solver.book.clients import Client
from setwright.solver.book.opened import Book
from setwright.solver.book.sessions import sessions_of
from setwright.solver.records.kept_blocks import blocks_of
from setwright.solver.records.week_at_hand import as_it_stands, monday_of
from setwright.solver.uses.log.log_checks import LogFinding, check_log
from setwright.solver.uses.log.missing_sessions import missing_sessions


def checked_log(
    book: Book, client: Client, catalogue: Catalogue, today: date, first: date | None = None
) -> list[LogFinding]:
    """What is amiss with the sessions from a day on, in the order of their days.

    Sessions that were planned before `today` and are not in the log are among it.
    """
    logged = sessions_of(book, client)
    weeks = {week.starts: week for block in blocks_of(book, client, catalogue).values() for week in block.weeks}
    stand = [as_it_stands(book, client, week, catalogue) for week in weeks.values()]
    audits = {week.starts: week.audit for week in stand if week.starts is not None and week.audit is not None}
    found = [
        *check_log([s for s in logged if first is None or s.on >= first], lambda day: audits.get(monday_of(day))),
        *(one for one in missing_sessions(tuple(audits.items()), logged, today) if first is None or one.on >= first),
    ]
    return sorted(found, key=lambda finding: finding.on)
