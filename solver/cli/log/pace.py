"""`setwright log pace`: how long this client takes, told from the log, and taken over into the brief."""

from __future__ import annotations

from datetime import date
from pathlib import Path

import click

from setwright.solver.cli.books import book_option, the_book
from setwright.solver.cli.console.messages import columns, say
from setwright.solver.cli.console.output import check_target, deliver
from setwright.solver.cli.lazy_group import PrintingCommand
from setwright.solver.cli.option_types import DayType
from setwright.solver.cli.options import catalogue_option, open_catalogue, output_options, wants_json


@click.command("pace", cls=PrintingCommand)
@click.argument("code")
@click.option("--on", type=DayType(), metavar="DATE", help="From the block of this day; else today's, else the newest.")
@click.option("--take", is_flag=True, help="Take the pace over into the client's brief, as a new version.")
@book_option
@catalogue_option
@output_options
def command(
    code: str, on: date | None, take: bool, overlay: Path | None, as_json: bool, target: Path | None, force: bool
) -> None:
    """Tell from the log of CODE the seconds of a repetition, of changes and of rests, each with its interval.

    Sessions with the time at which each set ended tell most; starts and ends of sessions tell the whole alone.
    """
    from setwright.solver.book.clients import client_of
    from setwright.solver.records.logs.paces import pace_of, take_pace
    from setwright.solver.sheets.document.progress.pace_document import pace_document
    from setwright.solver.sheets.screen.progress.pace_words import pace_text

    check_target(target, force)
    catalogue = open_catalogue(overlay)
    with the_book() as book:
        client = client_of(book, code)
        pace = pace_of(book, client, catalogue, on or date.today())
        if take:
            after = take_pace(book, client, pace, "--take")
            say(f"written down: @{after.code}, version {after.version} of the brief, with this pace")
    deliver(pace_document(pace) if wants_json(as_json, target) else pace_text(pace, columns()), target, force)
