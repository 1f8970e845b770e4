"""`setwright log import`: a file's sessions into the book, all of them or none."""

from __future__ import annotations

from collections.abc import Mapping
from datetime import date
from pathlib import Path

import click

from setwright.solver.cli.books import book_option, the_book
from setwright.solver.cli.console.input import bytes_of, place_of
from setwright.solver.cli.console.messages import say
from setwright.solver.cli.lazy_group import PrintingCommand
from setwright.solver.cli.log.columns_type import ColumnsType
from setwright.solver.cli.log.read import say_what_was_left
from setwright.solver.cli.options import FILE, catalogue_option, open_catalogue


@click.command("import", cls=PrintingCommand)
@click.argument("code")
@click.argument("file", type=FILE)
@click.option(
    "--columns",
    type=ColumnsType(),
    metavar="FIELD=HEADING,...",
    help="Which heading stands for which field: date=Datum,load=Weight.",
)
@click.option("--accept-near", is_flag=True, help="Take the nearest lift for a name that is not known.")
@click.option("--replace", "anew", is_flag=True, help="Let a session take the place of another of the same day.")
@book_option
@catalogue_option
def command(
    code: str, file: Path, columns: Mapping[str, str] | None, accept_near: bool, anew: bool, overlay: Path | None
) -> None:
    """Write down the sessions in FILE for CODE: a filled-in workbook or table of ours, any CSV, TSV, XLSX, or JSON.

    All of it is written or nothing; the same file twice is written once. What is no set is kept as it was written.
    """
    from setwright.solver.book.clients import client_of
    from setwright.solver.book.sessions import log_sessions
    from setwright.solver.foreign.log.tables.table import MOST_BYTES
    from setwright.solver.records.logs.written_log import ReadingOfALog, kept_words, read_for

    catalogue = open_catalogue(overlay)
    data = bytes_of(file, MOST_BYTES, "name a log's file")
    with the_book() as book:
        client = client_of(book, code)
        how = ReadingOfALog(columns, accept_near)
        found = read_for(client, data, place_of(file), catalogue, how, date.today())
        say_what_was_left(found)
        kept = log_sessions(book, client, found.sessions, found.unread, data, replace=anew)
        say(kept_words(client.code, kept))
