"""`setwright variants status`: how a folder stands."""

from __future__ import annotations

from pathlib import Path

import click

from setwright.solver.cli.options import FILE, output_options, wants_json
from setwright.solver.cli.output import check_target, columns, deliver


@click.command("status")
@click.argument("folder", type=FILE)
@output_options
def command(folder: Path, as_json: bool, target: Path | None, force: bool) -> None:
    """Show what FOLDER holds: done, impossible, to be tried again and left; then the matrix."""
    from setwright.solver.sheets.document.json_values import dumped
    from setwright.solver.sheets.variants.matrix_text import matrix_text, status_document
    from setwright.solver.sheets.variants.rows import rows_of
    from setwright.solver.uses.variants.manifest import read_manifest
    from setwright.solver.uses.variants.store import Store

    check_target(target, force)
    matrix, store = read_manifest(folder), Store(folder)
    rows = rows_of(matrix, store)
    old = sum(key not in matrix.place_of for key in store.stored())
    if wants_json(as_json, target):
        text = dumped(status_document(rows, old))
    else:
        text = matrix_text(matrix, rows, columns())
        text += f"\n{old} results of earlier runs are kept too; `run --tidy` removes them.\n" if old else ""
    deliver(text, target, force)
