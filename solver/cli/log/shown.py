"""`setwright log show` and `setwright log check`."""

from __future__ import annotations

from datetime import date
from pathlib import Path

import click

from setwright.solver.cli.books import book_option, the_book
from setwright.solver.cli.console.messages import columns
from setwright.solver.cli.console.output import check_target, deliver
from setwright.solver.cli.lazy_group import PrintingCommand
from setwright.solver.cli.option_types import DayType
from setwright.solver.cli.options import catalogue_option, open_catalogue, output_options, wants_json

MOST_TABLES = 10
"""So many sessions are printed as tables; more as a list."""


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
    from setwright.solver.records.logs.written_log import between
    from setwright.solver.sheets.document.progress.log_model import log_document
    from setwright.solver.sheets.screen.over_time.log import session_text, sessions_text

    check_target(target, force)
    catalogue = open_catalogue(overlay)
    with the_book() as book:
        client = client_of(book, code)
        found, unread = between(sessions_of(book, client), first, last), unread_of(book, client)
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
    from setwright.solver.records.logs.checked_log import checked_log
    from setwright.solver.sheets.screen.over_time.log import findings_text

    catalogue = open_catalogue(overlay)
    with the_book() as book:
        findings = checked_log(book, client_of(book, code), catalogue, on or date.today(), first)
    deliver(findings_text(findings, catalogue, columns()), None, False)
