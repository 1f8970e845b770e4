"""A client's log held against the weeks that were planned, as they stand: slips, differences, and what lacks."""

from __future__ import annotations

from datetime import date

from setwright.catalogue.entries import Catalogue
from setwright.solver.auditing import Audit
from setwright.solver.book.clients import Client
from setwright.solver.book.opened import Book
from setwright.solver.book.planned import kept_weeks
from setwright.solver.book.sessions import sessions_of
from setwright.solver.log.mondays import monday_of
from setwright.solver.records.kept_blocks import blocks_of
from setwright.solver.records.week_at_hand import read_kept_week
from setwright.solver.uses.log.log_checks import LogFinding, check_log
from setwright.solver.uses.log.missing_sessions import missing_sessions


def checked_log(
    book: Book, client: Client, catalogue: Catalogue, today: date, first: date | None = None
) -> list[LogFinding]:
    """What is amiss with the sessions from a day on, in the order of their days.

    Sessions that were planned before `today` and are not in the log are among it.
    """
    logged = sessions_of(book, client)
    audits = _audits(book, client, catalogue)
    found = [
        *check_log([s for s in logged if first is None or s.on >= first], lambda day: audits.get(monday_of(day))),
        *(one for one in missing_sessions(tuple(audits.items()), logged, today) if first is None or one.on >= first),
    ]
    return sorted(found, key=lambda finding: finding.on)


def _audits(book: Book, client: Client, catalogue: Catalogue) -> dict[date, Audit]:
    """Monday -> the week that stands there: the one kept last, else the block's; without weeks off."""
    found = {
        week.starts: week.audit
        for block in blocks_of(book, client, catalogue).values()
        for week in block.weeks
        if week.starts is not None and week.audit is not None
    }
    newest = {kept.starts: kept.document for kept in kept_weeks(book, client)}
    found |= {monday: read_kept_week(book, client, document, catalogue).audit for monday, document in newest.items()}
    return dict(sorted(found.items()))
