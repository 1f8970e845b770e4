"""`setwright block next`: what to load next, from the log, with one reason each."""

from __future__ import annotations

from datetime import date
from pathlib import Path
from typing import TYPE_CHECKING, Any

import click

from setwright.catalogue.fault_collector import FaultCollector
from setwright.catalogue.faults import Fault, UsageFault
from setwright.solver.cli.blocks.output import output_faults
from setwright.solver.cli.books import book_option, the_book
from setwright.solver.cli.console.folder_output import deliver_all
from setwright.solver.cli.console.messages import columns
from setwright.solver.cli.console.output import check_target, deliver
from setwright.solver.cli.lazy_group import PrintingCommand
from setwright.solver.cli.option_types import DayType, gathered_faults
from setwright.solver.cli.options import FILE, catalogue_option, open_catalogue, output_options, wants_json
from setwright.solver.cli.sheet_options import coach_with, sheets_options, undated_faults

if TYPE_CHECKING:
    from setwright.solver.sheets.handout.coach import Coach
    from setwright.solver.uses.blocks.block import Block
    from setwright.solver.uses.progress.next_week import NextWeek


@click.command("next", cls=PrintingCommand)
@click.argument("code")
@click.option("--on", type=DayType(), metavar="DATE", help="The week that this day stands in; today.")
@sheets_options
@click.option("--plots", type=FILE, metavar="FOLDER", help="Draw each lift's estimated maximum into FOLDER.")
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
    plots: Path | None,
    coach_file: Path | None,
    overlay: Path | None,
    as_json: bool,
    target: Path | None,
    force: bool,
) -> None:
    """Say what CODE loads next in the week of the block, why, what was done of the plan, and what stands still.

    \b
    setwright block next @M --on 2026-01-12 --sheets cards
    """
    from setwright.solver.book.clients import client_of
    from setwright.solver.records.next_week import next_week_of

    catalogue, collector, day = open_catalogue(overlay), FaultCollector(), on or date.today()
    collector.result_of(lambda: check_target(target, force))
    collector.add(gathered_faults(ctx))
    collector.add(list(output_faults(folder, formats, None)))
    collector.raise_all()
    with the_book() as book:
        block, found = next_week_of(book, client_of(book, code), catalogue, day)
    if folder:
        names = formats or ("pdf",)
        coach = coach_with(coach_file, catalogue, start=found.week.starts)
        collector.add(undated_faults(names, coach))
        collector.raise_all()
        deliver_all(_sheets(block, found, names, coach), folder, force)
    if plots:
        deliver_all(_plots(found), plots, force)
    deliver(_result_of(found, wants_json(as_json, target)), target, force)


def _result_of(found: NextWeek, as_document: bool) -> str | dict[str, Any]:
    """The targets as a document, or as text with what was done before and what stands still."""
    if as_document:
        from setwright.solver.sheets.document.progress.next_week_document import next_week_document

        return next_week_document(found)
    from setwright.solver.sheets.screen.progress.next_week import next_week_text

    return next_week_text(found, columns())


def _sheets(block: Block, found: NextWeek, formats: tuple[str, ...], coach: Coach | None) -> dict[str, bytes]:
    """File name -> bytes of the week's sheets, its cards with the loads from the log."""
    from setwright.solver.sheets.blocks.files import next_week_sheets
    from setwright.solver.sheets.handout.coach import DEFAULT_COACH

    return next_week_sheets(block, found, formats, coach or DEFAULT_COACH)


def _plots(found: NextWeek) -> dict[str, bytes]:
    """File name -> SVG of each lift's estimated maximum, for lifts that were done twice or more."""
    from setwright.solver.sheets.screen.progress.next_week import drawn_maxima

    files = {f"{exercise}.svg": drawn.encode() for exercise, drawn in drawn_maxima(found).items()}
    if not files:
        raise UsageFault(Fault("--plots", "no lift of the week was logged twice with its load", "log more sessions"))
    return files
