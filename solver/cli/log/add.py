"""`setwright log add`: sets typed in, one text a lift."""

from __future__ import annotations

from dataclasses import replace
from datetime import date
from pathlib import Path

import click

from setwright.solver.cli.books import book_option, the_book
from setwright.solver.cli.console.messages import say
from setwright.solver.cli.lazy_group import PrintingCommand
from setwright.solver.cli.option_types import DayType
from setwright.solver.cli.options import catalogue_option, open_catalogue


@click.command("add", cls=PrintingCommand)
@click.argument("code")
@click.argument("sets", nargs=-1, required=True)
@click.option("--on", type=DayType(), metavar="DATE", help="The day of the session; today.")
@click.option("--session", type=click.IntRange(1, 7), metavar="N", help="Which session of the week it was.")
@click.option("--minutes", type=click.FloatRange(0, 600, min_open=True), metavar="M", help="How long it took.")
@click.option("--how-hard", type=click.IntRange(0, 10), metavar="0-10", help="How hard it was, as the client says.")
@click.option("--note", default="", metavar="TEXT", help="A remark.")
@click.option("--replace", "anew", is_flag=True, help="Write the session anew; else the sets go on from those there.")
@book_option
@catalogue_option
def command(
    code: str,
    sets: tuple[str, ...],
    on: date | None,
    session: int | None,
    minutes: float | None,
    how_hard: int | None,
    note: str,
    anew: bool,
    overlay: Path | None,
) -> None:
    """Write down SETS of a session of CODE: each a lift and what was done, load x repetitions.

    \b
    setwright log add @M "bench press 60x8,8,7 @ 2 RIR" "pull-up bw x 8, 7" --on 2026-01-05
    """
    from setwright.solver.book.clients import client_of
    from setwright.solver.foreign.log.typed_session import typed_session
    from setwright.solver.records.logs.written_log import kept_words, write_on

    catalogue, today = open_catalogue(overlay), date.today()
    with the_book() as book:
        client = client_of(book, code)
        found = typed_session(sets, on or today, catalogue, client.unit, today)
        for said in found.notes:
            say(said)
        typed = replace(found.sessions[0], session=session, minutes=minutes, how_hard=how_hard, note=note)
        say(kept_words(client.code, write_on(book, client, typed, anew)))
