"""`setwright variants status`: how a folder stands."""

from __future__ import annotations

from pathlib import Path

import click

from setwright.solver.cli.console.messages import columns
from setwright.solver.cli.console.output import check_target, deliver
from setwright.solver.cli.lazy_group import PrintingCommand
from setwright.solver.cli.options import FILE, output_options, wants_json


@click.command("status", cls=PrintingCommand)
@click.argument("folder", type=FILE)
@output_options
def command(folder: Path, as_json: bool, target: Path | None, force: bool) -> None:
    """Show what FOLDER holds: done, impossible, to be tried again and left; then the matrix."""
    from setwright.solver.sheets.variants.matrix_screen import matrix_text, status_document
    from setwright.solver.sheets.variants.variant_rows import read_variant_rows
    from setwright.solver.uses.variants.manifest import read_manifest
    from setwright.solver.uses.variants.result_store import ResultStore

    check_target(target, force)
    matrix, store = read_manifest(folder), ResultStore(folder)
    rows = read_variant_rows(matrix, store)
    old = sum(key not in matrix.place_of for key in store.stored())
    if wants_json(as_json, target):
        deliver(status_document(rows, old), target, force)
        return
    kept = f"\n{old} results of earlier runs are kept too; `run --tidy` removes them.\n" if old else ""
    deliver(matrix_text(matrix, rows, columns()) + kept, target, force)
