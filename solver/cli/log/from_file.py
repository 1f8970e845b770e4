"""`setwright log import`: a file's sessions into the book, all of them or none."""

from __future__ import annotations

from collections.abc import Mapping
from datetime import date
from pathlib import Path

import click

from setwright.solver.cli.books import book_option, the_book
from setwright.solver.cli.console.input import bytes_of, place_of
from setwright.solver.cli.lazy_group import PrintingCommand
from setwright.solver.cli.log.columns_type import ColumnsType
from setwright.solver.cli.log.kept import say_kept
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
    from setwright.catalogue.faults import Fault, UsageFault
    from setwright.solver.book.clients import client_of
    from setwright.solver.book.sessions import log_sessions
    from setwright.solver.foreign.log.log_file import read_log
    from setwright.solver.foreign.log.tables.table import MOST_BYTES

    catalogue = open_catalogue(overlay)
    data = bytes_of(file, MOST_BYTES, "name a log's file")
    with the_book() as book:
        client = client_of(book, code)
        found = read_log(data, place_of(file), catalogue, client.unit, columns, accept_near, date.today())
        if other := next((session.unit for session in found.sessions if session.unit != client.unit), None):
            said = f"its loads are in {other}, those of {code} in {client.unit}: kg and lb are never mixed"
            raise UsageFault(Fault(place_of(file), said, f"write the loads in {client.unit}"))
        say_what_was_left(found)
        say_kept(client, log_sessions(book, client, found.sessions, found.unread, data, replace=anew))
