"""`setwright variants sheets`: every week of a folder, as text or in the formats that a client is handed."""

from __future__ import annotations

from datetime import date
from pathlib import Path
from typing import TYPE_CHECKING

import click

from setwright.catalogue.faults import Fault, UsageFault
from setwright.solver.cli.console.folder_output import deliver_all, folder_faults
from setwright.solver.cli.console.messages import columns, say
from setwright.solver.cli.console.standard_output import print_text
from setwright.solver.cli.lazy_group import PrintingCommand
from setwright.solver.cli.option_types import gathered_faults
from setwright.solver.cli.options import FILE, catalogue_option, open_catalogue
from setwright.solver.cli.sheet_options import FORMAT_NAMES, coach_option, coach_with, start_option, undated_faults

if TYPE_CHECKING:
    from setwright.catalogue.entries import Catalogue
    from setwright.solver.sheets.handout.coach import Coach
    from setwright.solver.uses.variants.matrix import VariantMatrix
    from setwright.solver.uses.variants.result_store import ResultStore


@click.command("sheets", cls=PrintingCommand)
@click.argument("folder", type=FILE)
@click.option("-o", "--output", "target", type=FILE, metavar="FOLDER", help="A file for each week in FOLDER.")
@click.option(
    "--as",
    "formats",
    type=FORMAT_NAMES,
    metavar="FORMATS",
    help="pdf, xlsx, ics, html, csv, md, json; commas. Text unless said.",
)
@coach_option
@start_option
@click.option("--force", is_flag=True, help="Write over files that are there.")
@catalogue_option
@click.pass_context
def command(
    ctx: click.Context,
    folder: Path,
    target: Path | None,
    formats: tuple[str, ...] | None,
    coach_file: Path | None,
    start: date | None,
    force: bool,
    overlay: Path | None,
) -> None:
    """Print every week of FOLDER, or write each into files named after its variant."""
    from setwright.solver.uses.variants.manifest import read_manifest
    from setwright.solver.uses.variants.result_store import ResultStore

    _raise(gathered_faults(ctx))
    matrix, store, catalogue = read_manifest(folder), ResultStore(folder), open_catalogue(overlay)
    if matrix.stamp["catalogue"] != catalogue.digest:
        said = "was run with another catalogue than this one"
        raise UsageFault(Fault(str(folder), said, "name that file with --catalogue, or run the template again"))
    if formats is not None and target is None:
        raise UsageFault(Fault("--as", "writes files, and no folder is named", "add -o FOLDER"))
    if target is None:
        count = _print_weeks(matrix, store, catalogue)
    elif formats is None:
        count = _write_texts(matrix, store, catalogue, target, force)
    else:
        coach = coach_with(coach_file, catalogue, start=start)
        count = _write_formats(matrix, store, catalogue, target, force, formats, coach)
    say(f"{count} of {len(matrix.variants)} variants have a week" + (f"; written into {target}" if target else ""))


def _print_weeks(matrix: VariantMatrix, store: ResultStore, catalogue: Catalogue) -> int:
    """Print every week on standard output; how many there are."""
    from setwright.solver.batch.stored_weeks import week_texts

    count = 0
    for _, text in week_texts(matrix, store, catalogue, columns()):
        print_text(("" if not count else "\n" + "=" * 60 + "\n\n") + text)
        count += 1
    return count


def _write_texts(matrix: VariantMatrix, store: ResultStore, catalogue: Catalogue, target: Path, force: bool) -> int:
    """Write a text file for each week; how many there are. Raises UsageFault before anything is written."""
    from setwright.solver.batch.stored_weeks import week_texts
    from setwright.solver.uses.variants.matrix import file_stem

    _raise(folder_faults(target, tuple(f"{file_stem(variant.name)}.txt" for variant in matrix.variants), force))
    count = 0
    for variant, text in week_texts(matrix, store, catalogue, columns()):
        deliver_all({f"{file_stem(variant.name)}.txt": text.encode()}, target, force, quiet=True)
        count += 1
    return count


def _write_formats(
    matrix: VariantMatrix,
    store: ResultStore,
    catalogue: Catalogue,
    target: Path,
    force: bool,
    formats: tuple[str, ...],
    coach: Coach,
) -> int:
    """Write each week in the formats of `setwright sheet`; how many there are.

    Raises UsageFault before anything is written, and SetwrightError where a week cannot be written in a format.
    """
    from setwright.solver.batch.stored_weeks import week_handouts
    from setwright.solver.sheets.formats import FORMATS, written
    from setwright.solver.uses.variants.matrix import file_stem

    endings = [FORMATS[name].ending for name in formats]
    files = tuple(f"{file_stem(variant.name)}.{ending}" for variant in matrix.variants for ending in endings)
    _raise([*undated_faults(formats, coach), *folder_faults(target, files, force)])
    count = 0
    for variant, handout in week_handouts(matrix, store, catalogue, coach):
        stem = file_stem(variant.name)
        contents = {f"{stem}.{FORMATS[name].ending}": written(name, handout) for name in formats}
        deliver_all(contents, target, force, True)
        count += 1
    return count


def _raise(faults: list[Fault]) -> None:
    if faults:
        raise UsageFault(faults)
