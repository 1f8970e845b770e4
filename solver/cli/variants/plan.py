"""`setwright variants plan`: the matrix, its size and its expected time, before anything is solved."""

from __future__ import annotations

from pathlib import Path

import click

from setwright.solver.cli.console.messages import columns
from setwright.solver.cli.console.output import check_target, deliver
from setwright.solver.cli.lazy_group import PrintingCommand
from setwright.solver.cli.option_types import WholeNumberType
from setwright.solver.cli.options import (
    FILE,
    catalogue_option,
    open_catalogue,
    output_options,
    search_option,
    wants_json,
)
from setwright.solver.search.limits import DEFAULT


@click.command("plan", cls=PrintingCommand)
@click.argument("template", type=FILE)
@search_option(DEFAULT)
@click.option("--workers", type=WholeNumberType(1, 10_000), metavar="N", help="Estimate the time for N workers.")
@catalogue_option
@output_options
def command(
    template: Path,
    search: str,
    workers: int | None,
    overlay: Path | None,
    as_json: bool,
    target: Path | None,
    force: bool,
) -> None:
    """Show the variants a TEMPLATE makes, how many there are and how long they may take."""
    from setwright.solver.batch.planned_matrix import matrix_in
    from setwright.solver.sheets.variants.plan_screen import plan_document, plan_text
    from setwright.solver.uses.variants.expected_time import expected_seconds
    from setwright.solver.uses.variants.workers import usable_cores

    check_target(target, force)
    matrix = matrix_in(template, open_catalogue(overlay), search)
    workers = workers or usable_cores()
    seconds = expected_seconds(matrix, range(len(matrix.variants)), search, workers)
    if wants_json(as_json, target):
        deliver(plan_document(matrix, search, workers, seconds), target, force)
    else:
        deliver(plan_text(matrix, search, workers, seconds, columns()), target, force)
