"""`setwright log read`: a training log from a file, checked, as text or as its document."""

from __future__ import annotations

from collections.abc import Mapping
from datetime import date
from pathlib import Path
from typing import TYPE_CHECKING, Final

import click

from setwright.solver.cli.console.input import bytes_of, place_of
from setwright.solver.cli.console.messages import columns as page_columns
from setwright.solver.cli.console.messages import say
from setwright.solver.cli.console.output import check_target, deliver
from setwright.solver.cli.lazy_group import PrintingCommand
from setwright.solver.cli.log.columns_type import ColumnsType
from setwright.solver.cli.options import FILE, catalogue_option, open_catalogue, output_options, wants_json

if TYPE_CHECKING:
    from setwright.catalogue.entries import Catalogue
    from setwright.solver.brief.schema import Unit
    from setwright.solver.foreign.log.log_file import LogFile

MOST_TABLES: Final = 10
"""So many sessions are printed as tables; more as a list."""
MOST_UNREAD: Final = 10
"""So many rows that were not read are named; more are counted."""


@click.command("read", cls=PrintingCommand)
@click.argument("file", type=FILE)
@click.option(
    "--columns",
    "columns",
    type=ColumnsType(),
    metavar="FIELD=HEADING,...",
    help="Which heading stands for which field: date=Datum,load=Weight.",
)
@click.option("--unit", type=click.Choice(("kg", "lb")), default="kg", help="The unit of loads that say none. [kg]")
@click.option("--accept-near", is_flag=True, help="Take the nearest lift for a name that is not known.")
@catalogue_option
@output_options
def command(
    file: Path,
    columns: Mapping[str, str] | None,
    unit: Unit,
    accept_near: bool,
    overlay: Path | None,
    as_json: bool,
    target: Path | None,
    force: bool,
) -> None:
    """The sessions in FILE: a filled-in workbook or table of ours, or any CSV, TSV or XLSX with a row a set or a lift.

    All of it is read or nothing. What is no set is kept as unread and named on standard error.

    \b
    setwright log read log.csv --json -o log.json
    """
    from setwright.solver.foreign.log.log_file import read_log
    from setwright.solver.foreign.log.tables.table import MOST_BYTES
    from setwright.solver.sheets.document.progress.log_model import log_document

    check_target(target, force)
    catalogue = open_catalogue(overlay)
    data = bytes_of(file, MOST_BYTES, "name a log's file")
    found = read_log(data, place_of(file), catalogue, unit, columns, accept_near, date.today())
    say_what_was_left(found)
    if wants_json(as_json, target):
        deliver(log_document(found.sessions, found.unread), target, force)
    else:
        deliver(_text(found, catalogue), target, force)


def say_what_was_left(found: LogFile) -> None:
    """Name what was read otherwise than written, and where something was not read; its words are not repeated."""
    for note in found.notes:
        say(note)
    for row in found.unread[:MOST_UNREAD]:
        say(f"not read: {row.place}, {row.why}")
    if (more := len(found.unread) - MOST_UNREAD) > 0:
        say(f"not read: {more} more; --json holds them all")


def _text(found: LogFile, catalogue: Catalogue) -> str:
    from setwright.solver.sheets.screen.over_time.log import session_text, sessions_text

    if not 0 < len(found.sessions) <= MOST_TABLES:
        return sessions_text(found.sessions)
    return "\n".join(session_text(session, catalogue, page_columns()) for session in found.sessions)
