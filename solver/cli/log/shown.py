"""`setwright log show` and `setwright log check`."""

from __future__ import annotations

from datetime import date
from pathlib import Path
from typing import TYPE_CHECKING

import click

from setwright.solver.cli.books import book_option, the_book
from setwright.solver.cli.console.messages import columns
from setwright.solver.cli.console.output import check_target, deliver
from setwright.solver.cli.lazy_group import PrintingCommand
from setwright.solver.cli.option_types import DayType
from setwright.solver.cli.options import catalogue_option, open_catalogue, output_options, wants_json

if TYPE_CHECKING:
    from setwright.solver.log.values import LoggedSession

MOST_TABLES = 10
"""So many sessions are printed as tables; more as a list."""


def _between(sessions: tuple[LoggedSession, ...], first: date | None, last: date | None) -> list[LoggedSession]:
    return [s for s in sessions if (first is None or s.on >= first) and (last is None or s.on <= last)]


@click.command("show", cls=PrintingCommand)
@click.argument("code")
@click.option("--from", "first", type=DayType(), metavar="DATE", help="No session before it.")
@click.option("--to", "last", type=DayType(), metavar="DATE", help="No session after it.")
@book_option
@catalogue_option
@output_options
def show_command(
    code: str,
    first: date | None,
    last: date | None,
    overlay: Path | None,
    as_json: bool,
    target: Path | None,
    force: bool,
) -> None:
    """Show the sessions of CODE: up to ten as tables, more as a list."""
    from setwright.solver.book.clients import client_of
    from setwright.solver.book.sessions import sessions_of, unread_of
    from setwright.solver.sheets.document.progress.log_model import log_document
    from setwright.solver.sheets.screen.over_time.log import session_text, sessions_text

    check_target(target, force)
    catalogue = open_catalogue(overlay)
    with the_book() as book:
        client = client_of(book, code)
        found, unread = _between(sessions_of(book, client), first, last), unread_of(book, client)
    if wants_json(as_json, target):
        deliver(log_document(found, unread), target, force)
    elif 0 < len(found) <= MOST_TABLES:
        deliver("\n".join(session_text(session, catalogue, columns()) for session in found), target, force)
    else:
        deliver(sessions_text(found), target, force)


@click.command("check", cls=PrintingCommand)
@click.argument("code")
@click.option("--from", "first", type=DayType(), metavar="DATE", help="No session before it.")
@click.option("--on", type=DayType(), metavar="DATE", help="Sessions planned before it are to be there; today.")
@book_option
@catalogue_option
def check_command(code: str, first: date | None, on: date | None, overlay: Path | None) -> None:
    """Show what in the log of CODE looks like a slip, what is unlike the block's weeks, and what is missing."""
    from setwright.solver.book.clients import client_of
    from setwright.solver.book.sessions import sessions_of
    from setwright.solver.records.kept_blocks import blocks_of
    from setwright.solver.records.week_at_hand import as_it_stands, monday_of
    from setwright.solver.sheets.screen.over_time.log import findings_text
    from setwright.solver.uses.log.log_checks import check_log
    from setwright.solver.uses.log.missing_sessions import missing_sessions

    catalogue = open_catalogue(overlay)
    with the_book() as book:
        client = client_of(book, code)
        logged = sessions_of(book, client)
        weeks = {week.starts: week for block in blocks_of(book, client, catalogue).values() for week in block.weeks}
        stand = [as_it_stands(book, client, week, catalogue) for week in weeks.values()]
    audits = {week.starts: week.audit for week in stand if week.starts is not None and week.audit is not None}
    missing = missing_sessions(tuple(audits.items()), logged, on or date.today())
    findings = [
        *check_log(_between(logged, first, None), lambda day: audits.get(monday_of(day))),
        *(finding for finding in missing if first is None or finding.on >= first),
    ]
    deliver(findings_text(sorted(findings, key=lambda finding: finding.on), catalogue, columns()), None, False)
