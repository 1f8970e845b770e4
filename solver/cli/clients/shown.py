"""`setwright client list` and `setwright client show`."""

from __future__ import annotations

from datetime import date
from pathlib import Path

import click

from setwright.solver.cli.books import book_option, the_book
from setwright.solver.cli.console.messages import columns
from setwright.solver.cli.console.output import check_target, deliver
from setwright.solver.cli.lazy_group import PrintingCommand
from setwright.solver.cli.options import output_options, wants_json


@click.command("list", cls=PrintingCommand)
@click.option("--resting", is_flag=True, help="List those at rest too.")
@book_option
@output_options
def list_command(resting: bool, as_json: bool, target: Path | None, force: bool) -> None:
    """List the clients: code, days and minutes, block, last session."""
    from setwright.catalogue.load import load_catalogue
    from setwright.solver.records.standing import standings
    from setwright.solver.sheets.screen.over_time.clients import clients_document, clients_text

    check_target(target, force)
    with the_book() as book:
        found = [s for s in standings(book, load_catalogue(), date.today()) if resting or s.resting_since is None]
    deliver(clients_document(found) if wants_json(as_json, target) else clients_text(found, columns()), target, force)


@click.command("show", cls=PrintingCommand)
@click.argument("code")
@book_option
@output_options
def show_command(code: str, as_json: bool, target: Path | None, force: bool) -> None:
    """Show CODE: what is asked, the blocks, the sessions, what was changed. No health note is shown."""
    from setwright.catalogue.load import load_catalogue
    from setwright.solver.book.clients import client_of
    from setwright.solver.records.standing import standing_of
    from setwright.solver.sheets.screen.over_time.clients import client_document, client_text

    check_target(target, force)
    with the_book() as book:
        found = standing_of(book, client_of(book, code), load_catalogue(), date.today())
    deliver(client_document(found) if wants_json(as_json, target) else client_text(found, columns()), target, force)
