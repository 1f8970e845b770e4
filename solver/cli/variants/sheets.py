"""`setwright variants sheets`: every week of a folder, as text or in the formats that a client is handed."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING

import click

from setwright.catalogue.faults import Fault, UsageFault
from setwright.solver.cli.options import FILE, catalogue_option, open_catalogue
from setwright.solver.cli.output import columns, say

if TYPE_CHECKING:
    from setwright.catalogue.entries import Catalogue
    from setwright.solver.sheets.handout.coach import Coach
    from setwright.solver.uses.variants.matrix import Matrix
    from setwright.solver.uses.variants.store import Store


@click.command("sheets")
@click.argument("folder", type=FILE)
@click.option("-o", "--output", "target", type=FILE, metavar="FOLDER", help="A file for each week in FOLDER.")
@click.option(
    "--as", "formats", metavar="FORMATS", help="pdf, xlsx, ics, html, csv, md, json; commas. Text unless said."
)
@click.option("--coach", "coach_file", type=FILE, metavar="FILE", help="Letterhead, words and defaults (coach.toml).")
@click.option("--start", metavar="YYYY-MM-DD", help="Each session falls on its first weekday from this day on.")
@click.option("--force", is_flag=True, help="Write over files that are there.")
@catalogue_option
def command(
    folder: Path,
    target: Path | None,
    formats: str | None,
    coach_file: Path | None,
    start: str | None,
    force: bool,
    overlay: Path | None,
) -> None:
    """Print every week of FOLDER, or write each into files named after its variant."""
    from setwright.solver.uses.variants.manifest import read_manifest
    from setwright.solver.uses.variants.store import Store

    matrix, store, catalogue = read_manifest(folder), Store(folder), open_catalogue(overlay)
    if matrix.stamp["catalogue"] != catalogue.digest:
        said = "was run with another catalogue than this one"
        raise UsageFault(Fault(str(folder), said, "name that file with --catalogue, or run the template again"))
    if formats is not None and target is None:
        raise UsageFault(Fault("--as", "writes files, and no folder is named", "add -o FOLDER"))
    if target is None:
        written = shown(matrix, store, catalogue)
    elif formats is None:
        written = texts(matrix, store, catalogue, target, force)
    else:
        written = handed(matrix, store, catalogue, target, force, formats, {"start": start}, coach_file)
    say(f"{written} of {len(matrix.cells)} variants have a week" + (f"; written into {target}" if target else ""))


def shown(matrix: Matrix, store: Store, catalogue: Catalogue) -> int:
    """Every week on standard output; how many there are."""
    from setwright.solver.batch.variant_task import sheets_of

    count = 0
    for _, text in sheets_of(matrix, store, catalogue, columns()):
        click.echo(("" if not count else "\n" + "=" * 60 + "\n\n") + text, nl=False)
        count += 1
    return count


def texts(matrix: Matrix, store: Store, catalogue: Catalogue, target: Path, force: bool) -> int:
    """A text file for each week."""
    from setwright.solver.batch.variant_task import sheets_of
    from setwright.solver.cli.folder import deliver_all, folder_faults
    from setwright.solver.uses.variants.matrix import file_stem

    refuse(folder_faults(target, tuple(f"{file_stem(cell.name)}.txt" for cell in matrix.cells), force))
    count = 0
    for cell, text in sheets_of(matrix, store, catalogue, columns()):
        deliver_all({f"{file_stem(cell.name)}.txt": text.encode()}, target, force, quiet=True)
        count += 1
    return count


def handed(
    matrix: Matrix,
    store: Store,
    catalogue: Catalogue,
    target: Path,
    force: bool,
    formats: str,
    said: dict[str, str | None],
    coach_file: Path | None,
) -> int:
    """The formats of `setwright sheet` for each week."""
    from setwright.solver.cli.folder import deliver_all, folder_faults
    from setwright.solver.cli.sheet import coach_of, formats_of, undated
    from setwright.solver.sheets.formats import FORMATS
    from setwright.solver.uses.variants.matrix import file_stem

    names = formats_of(formats, False)
    coach = coach_of(coach_file, {"start": None, "paper": None, "weeks": None, "revision": None, **said}, catalogue)
    endings = [FORMATS[name].ending for name in names]
    files = tuple(f"{file_stem(cell.name)}.{ending}" for cell in matrix.cells for ending in endings)
    refuse([*undated(names, coach), *folder_faults(target, files, force)])
    count = 0
    for cell in matrix.cells:
        made = made_of(store.read(cell.key), cell.key, catalogue, coach, names)
        if made:
            deliver_all(
                {f"{file_stem(cell.name)}.{end}": data for end, data in made.items()}, target, force, quiet=True
            )
            count += 1
    return count


def made_of(
    data: bytes | None, key: str, catalogue: Catalogue, coach: Coach, names: tuple[str, ...]
) -> dict[str, bytes]:
    """Ending -> bytes of one variant's week; nothing where it has none."""
    from setwright.solver.sheets.formats import FORMATS, written
    from setwright.solver.sheets.handout.handout import handout_of
    from setwright.solver.uses.variants.record import document_of

    found = document_of(data, key) if data else None
    if found is None or found["week"] is None:
        return {}
    handout = handout_of(found["week"], catalogue, coach, where=str(found["name"]))
    return {FORMATS[name].ending: written(name, handout) for name in names}


def refuse(faults: list[Fault]) -> None:
    if faults:
        raise UsageFault(faults)
