"""`setwright variants run`: what is missing in a folder, solved and stored as it arrives."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING, Final

import click

from setwright.catalogue.faults import Fault, UsageFault
from setwright.solver.cli.console.messages import columns, say
from setwright.solver.cli.console.standard_output import print_text
from setwright.solver.cli.console.stopping import Stopping
from setwright.solver.cli.exit_codes import ExitCode
from setwright.solver.cli.lazy_group import PrintingCommand
from setwright.solver.cli.option_types import ShardType, WholeNumberType
from setwright.solver.cli.options import FILE, catalogue_option, open_catalogue, search_option
from setwright.solver.cli.variants.run_words import RunProgress, end_words
from setwright.solver.search.limits import DEFAULT

if TYPE_CHECKING:
    from setwright.catalogue.entries import Catalogue
    from setwright.solver.uses.variants.dask_workers import TlsFiles
    from setwright.solver.uses.variants.matrix import VariantMatrix
    from setwright.solver.uses.variants.result_store import ResultStore
    from setwright.solver.uses.variants.running import Job, Tally
    from setwright.solver.uses.variants.workers import Workers

VARIANTS_FOLLOW: Final = "\nstopping: variants that are running are finished and stored (Ctrl-C again ends at once)"


@click.command("run", cls=PrintingCommand)
@click.argument("template", type=FILE)
@click.option("-o", "--output", "folder", type=FILE, required=True, metavar="FOLDER", help="Where results are kept.")
@search_option(DEFAULT)
@click.option("--workers", type=WholeNumberType(1, 1000), metavar="N", help="Processes; all usable cores unless said.")
@click.option("--cluster", metavar="ADDRESS", help="A Dask scheduler, tcp://HOST:PORT or tls://HOST:PORT.")
@click.option("--tls-ca", type=FILE, metavar="FILE", help="Who signs the cluster's certificates (PEM).")
@click.option("--tls-cert", type=FILE, metavar="FILE", help="This side's certificate (PEM).")
@click.option("--tls-key", type=FILE, metavar="FILE", help="This side's key (PEM).")
@click.option(
    "--shard",
    type=ShardType(),
    default=(1, 1),
    metavar="K/N",
    help="Solve the Kth of N parts, whole chains, for job arrays.",
)
@click.option("--tidy", is_flag=True, help="Remove results that the template no longer asks for.")
@catalogue_option
@click.pass_context
def command(
    ctx: click.Context,
    template: Path,
    folder: Path,
    search: str,
    workers: int | None,
    cluster: str | None,
    tls_ca: Path | None,
    tls_cert: Path | None,
    tls_key: Path | None,
    shard: tuple[int, int],
    tidy: bool,
    overlay: Path | None,
) -> None:
    """Solve every variant of a TEMPLATE that FOLDER does not hold yet, and write its matrix."""
    from setwright.solver.batch.planned_matrix import matrix_in
    from setwright.solver.batch.worker import solve_task
    from setwright.solver.uses.variants.manifest import read_earlier, write_manifest
    from setwright.solver.uses.variants.result_store import ResultStore
    from setwright.solver.uses.variants.running import Job, run_variants

    tls = (tls_ca, tls_cert, tls_key)
    _check_workers(cluster, tls, workers)
    catalogue = open_catalogue(overlay)
    matrix = matrix_in(template, catalogue, search)
    store = ResultStore(folder)
    store.open()
    _tell_of_another(read_earlier(folder), matrix, folder, tidy)
    write_manifest(store, matrix)
    overlay_file = None if overlay is None else (overlay.name, overlay.read_bytes())
    job = Job(matrix, store, solve_task, overlay_file, shard)
    with Stopping(VARIANTS_FOLLOW) as stopping:
        progress = RunProgress()
        crew = _workers_of(cluster, tls, workers, job)
        at_once = True
        try:
            tally = run_variants(job, crew, progress, stopping)
            at_once = False
        finally:
            progress.clear()
            crew.close(at_once)
    if tidy and shard == (1, 1):
        _remove_earlier(store, matrix)
    _finish(matrix, store, catalogue, tally, shard)
    unfinished = tally.troubled or tally.left
    ctx.exit(ExitCode.STOPPED if stopping.asked else ExitCode.ERROR if unfinished else ExitCode.DONE)


def _tell_of_another(earlier: VariantMatrix | None, matrix: VariantMatrix, folder: Path, tidy: bool) -> None:
    """Say that a folder was last run with another template; refuse to tidy that one's results away at once."""
    if earlier is None or earlier.title == matrix.title or not set(earlier.place_of).isdisjoint(matrix.place_of):
        return
    said = f"was last run with another template, {earlier.title or 'one without a title'!r}"
    if tidy:
        remedy = "name another folder; or, if they may go, run without --tidy first, then with it"
        raise UsageFault(Fault(str(folder), f"{said}, and --tidy would remove its results", remedy))
    say(f"{folder} {said}: its results are kept, but status, sheets and the matrix are of this one now")


def _check_workers(cluster: str | None, tls: tuple[Path | None, ...], workers: int | None) -> None:
    """Refuse, before anything is written, workers that are asked for in two ways."""
    from setwright.solver.uses.variants.dask_workers import check_address

    given = [path for path in tls if path is not None]
    if given and (cluster is None or len(given) < len(tls)):
        remedy = "give --tls-ca, --tls-cert and --tls-key with a tls:// cluster"
        raise UsageFault(Fault("--tls-ca, --tls-cert, --tls-key", "go together, and with --cluster", remedy))
    if cluster is not None and workers is not None:
        raise UsageFault(Fault("--workers", "is said with --cluster, which counts its own", "drop one of the two"))
    if cluster is not None:
        check_address(cluster, _tls_of(tls))


def _tls_of(tls: tuple[Path | None, ...]) -> TlsFiles | None:
    from setwright.solver.uses.variants.dask_workers import TlsFiles

    given = [path for path in tls if path is not None]
    return TlsFiles(*given) if given else None


def _workers_of(cluster: str | None, tls: tuple[Path | None, ...], workers: int | None, job: Job) -> Workers:
    """The workers that were asked for; no more processes than there are chains."""
    from setwright.solver.uses.variants.dask_workers import DaskWorkers
    from setwright.solver.uses.variants.workers import ProcessPool, usable_cores

    if cluster is not None:
        return DaskWorkers(cluster, _tls_of(tls))
    chains = len(job.matrix.chains[job.shard[0] - 1 :: job.shard[1]])
    return ProcessPool(max(1, min(workers or usable_cores(), chains)))


def _remove_earlier(store: ResultStore, matrix: VariantMatrix) -> None:
    """Remove the results of variants that the template no longer asks for."""
    old = [key for key in store.stored() if key not in matrix.place_of]
    for key in old:
        store.remove(key)
    if old:
        say(f"{len(old)} results that the template no longer asks for were removed")


def _finish(
    matrix: VariantMatrix, store: ResultStore, catalogue: Catalogue, tally: Tally, shard: tuple[int, int]
) -> None:
    """The matrix in the folder and on standard output; a shard writes it only when it finds every variant there."""
    from setwright.solver.batch.matrix_folder import write_matrix
    from setwright.solver.sheets.variants.matrix_screen import matrix_text
    from setwright.solver.sheets.variants.variant_rows import read_variant_rows

    rows = read_variant_rows(matrix, store)
    whole = shard == (1, 1)
    if whole or not any(row.end == "to do" for row in rows):
        for said in write_matrix(matrix, rows, store, catalogue):
            say(said)
    if whole:
        print_text(matrix_text(matrix, rows, columns()))
    say(end_words(tally, shard))
