"""`setwright block show`: the block that is kept, on screen, as a document, as sheets."""

from __future__ import annotations

from datetime import date
from pathlib import Path

import click

from setwright.catalogue.fault_collector import FaultCollector
from setwright.solver.cli.blocks.output import output_faults, result_of, sheets_of
from setwright.solver.cli.books import book_option, the_book
from setwright.solver.cli.console.folder_output import deliver_all
from setwright.solver.cli.console.output import check_target, deliver
from setwright.solver.cli.lazy_group import PrintingCommand
from setwright.solver.cli.option_types import DayType, gathered_faults
from setwright.solver.cli.options import catalogue_option, open_catalogue, output_options, wants_json
from setwright.solver.cli.sheet_options import coach_with, sheets_options, undated_faults
from setwright.solver.records.kept_blocks import block_at


@click.command("show", cls=PrintingCommand)
@click.argument("code")
@click.option("--on", type=DayType(), metavar="DATE", help="The block of this day; else today's, else the newest.")
@sheets_options
@book_option
@catalogue_option
@output_options
@click.pass_context
def command(
    ctx: click.Context,
    code: str,
    on: date | None,
    folder: Path | None,
    formats: tuple[str, ...] | None,
    coach_file: Path | None,
    overlay: Path | None,
    as_json: bool,
    target: Path | None,
    force: bool,
) -> None:
    """Show the block of CODE as it was planned.

    \b
    setwright block show @M --sheets cards --as pdf,xlsx
    """
    from setwright.solver.book.clients import client_of

    catalogue, collector = open_catalogue(overlay), FaultCollector()
    collector.result_of(lambda: check_target(target, force))
    collector.add(gathered_faults(ctx))
    collector.add(list(output_faults(folder, formats, None)))
    collector.raise_all()
    with the_book() as book:
        block = block_at(book, client_of(book, code), on or date.today(), catalogue)
    if folder:
        names = formats or ("pdf",)
        coach = coach_with(coach_file, catalogue, start=block.ask.starts)
        collector.add(undated_faults(names, coach))
        collector.raise_all()
        deliver_all(sheets_of(block, names, coach), folder, force)
    deliver(result_of(block, wants_json(as_json, target), False), target, force)
