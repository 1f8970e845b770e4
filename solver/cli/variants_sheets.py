"""`setwright variants sheets`: every week of a folder as a coach reads it."""

from __future__ import annotations

from pathlib import Path

import click

from setwright.catalogue.faults import Fault, UsageFault
from setwright.solver.cli.options import FILE, catalogue_option, open_catalogue
from setwright.solver.cli.output import check_target, columns, deliver, say


@click.command("sheets")
@click.argument("folder", type=FILE)
@click.option("-o", "--output", "target", type=FILE, metavar="FOLDER", help="A text file for each week in FOLDER.")
@click.option("--force", is_flag=True, help="Write over files that are there.")
@catalogue_option
def command(folder: Path, target: Path | None, force: bool, overlay: Path | None) -> None:
    """Print every week of FOLDER, or write each into a file named after its variant."""
    from setwright.solver.sheets.variant import sheets_of
    from setwright.solver.uses.variants.manifest import read_manifest
    from setwright.solver.uses.variants.matrix import file_stem
    from setwright.solver.uses.variants.store import Store

    matrix, catalogue = read_manifest(folder), open_catalogue(overlay)
    if matrix.stamp["catalogue"] != catalogue.digest:
        said = "was run with another catalogue than this one"
        raise UsageFault(Fault(str(folder), said, "name that file with --catalogue, or run the template again"))
    files = {} if target is None else {cell.key: target / f"{file_stem(cell.name)}.txt" for cell in matrix.cells}
    if target is not None:
        target.mkdir(parents=True, exist_ok=True)
    for path in files.values():
        check_target(path, force)
    written = 0
    for cell, text in sheets_of(matrix, Store(folder), catalogue, columns()):
        if target is None:
            click.echo(("" if not written else "\n" + "=" * 60 + "\n\n") + text, nl=False)
        else:
            deliver(text, files[cell.key], force, quiet=True)
        written += 1
    say(f"{written} of {len(matrix.cells)} variants have a week" + (f"; written into {target}" if target else ""))
