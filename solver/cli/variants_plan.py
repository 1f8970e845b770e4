"""`setwright variants plan`: the matrix, its size and its expected time, before anything is solved."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING

import click

from setwright.solver.cli.options import FILE, catalogue_option, open_catalogue, output_options, wants_json
from setwright.solver.cli.output import check_target, columns, deliver
from setwright.solver.search.limits import DEFAULT, SEARCHES

if TYPE_CHECKING:
    from setwright.catalogue.entries import Catalogue
    from setwright.solver.uses.variants.matrix import Matrix


@click.command("plan")
@click.argument("template", type=FILE)
@click.option(
    "--search", type=click.Choice(tuple(SEARCHES)), default=DEFAULT, show_default=True, help="How hard to search."
)
@click.option("--workers", type=click.IntRange(1, 10_000), metavar="N", help="Reckon the time for N workers.")
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
    from setwright.solver.sheets.document.json_values import dumped
    from setwright.solver.sheets.variants.plan_text import plan_document, plan_text
    from setwright.solver.uses.variants.engines import usable_cores
    from setwright.solver.uses.variants.expected import expected_seconds

    check_target(target, force)
    matrix = matrix_in(template, open_catalogue(overlay), search)
    workers = workers or usable_cores()
    seconds = expected_seconds(matrix, range(len(matrix.cells)), search, workers)
    if wants_json(as_json, target):
        text = dumped(plan_document(matrix, search, workers, seconds))
    else:
        text = plan_text(matrix, search, workers, seconds, columns())
    deliver(text, target, force)


def matrix_in(template: Path, catalogue: Catalogue, search: str) -> Matrix:
    """The matrix of a template's file."""
    from setwright.solver.batch.variant_task import stamp_of
    from setwright.solver.rulebook import RULES
    from setwright.solver.uses.variants.matrix import matrix_of
    from setwright.solver.uses.variants.template import read_template

    return matrix_of(read_template(template), catalogue, stamp_of(catalogue, SEARCHES[search]), tuple(RULES))
