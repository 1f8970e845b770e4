"""`setwright log pace`: how long this client takes, told from the log, and taken over into the brief."""

from __future__ import annotations

from datetime import date
from pathlib import Path

import click

from setwright.catalogue.faults import Fault, UsageFault
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
    from setwright.solver.book.clients import brief_of, client_of, keep_brief
    from setwright.solver.book.paces import keep_pace
    from setwright.solver.book.sessions import sessions_of
    from setwright.solver.records.kept_blocks import block_at
    from setwright.solver.sheets.document.progress.pace_document import pace_document
    from setwright.solver.sheets.screen.progress.pace_words import pace_text
    from setwright.solver.uses.pace.client_pace import NotEnough
    from setwright.solver.uses.pace.reading import client_pace

    check_target(target, force)
    catalogue = open_catalogue(overlay)
    with the_book() as book:
        client = client_of(book, code)
        block = block_at(book, client, on or date.today(), catalogue)
        pace = client_pace(block.base, sessions_of(book, client))
        if take:
            if isinstance(pace, NotEnough):
                raise UsageFault(Fault("--take", "too little is logged to tell a pace", "log more sessions with times"))
            keep_pace(book, client, pace_document(pace))
            clock = pace.clock.model_dump(exclude_none=True)
            after = keep_brief(book, client, {**brief_of(book, client), "clock": clock}, "the pace from the log")
            say(f"written down: @{after.code}, version {after.version} of the brief, with this pace")
    deliver(pace_document(pace) if wants_json(as_json, target) else pace_text(pace, columns()), target, force)
