"""A run of a template, as a task of a search process: variants one after the other, each stored as it is found."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from concurrent.futures import Future
from pathlib import Path
from typing import Any

from setwright.catalogue.entries import Catalogue
from setwright.solver.batch.matrix_folder import write_matrix
from setwright.solver.batch.planned_matrix import matrix_in
from setwright.solver.batch.worker import solve_task
from setwright.solver.desk.searches.task import Telling
from setwright.solver.sheets.variants.matrix_document import matrix_document
from setwright.solver.sheets.variants.variant_rows import read_variant_rows
from setwright.solver.uses.variants.manifest import write_manifest
from setwright.solver.uses.variants.result_store import ResultStore
from setwright.solver.uses.variants.running import Job, run_variants
from setwright.solver.uses.variants.task import VariantTask, Work


def run_template(arguments: Mapping[str, Any], catalogue: Catalogue, telling: Telling) -> Mapping[str, Any]:
    """The matrix document, with the template's name, of the file `template` run into `folder` by `search`.

    Raises UsageFault for a template that cannot be read, SetwrightError where the folder cannot be written.
    """
    matrix = matrix_in(Path(arguments["template"]), catalogue, arguments["search"])
    store = ResultStore(Path(arguments["folder"]))
    store.open()
    write_manifest(store, matrix)

    def document() -> dict[str, Any]:
        return {**matrix_document(matrix, read_variant_rows(matrix, store)), "name": arguments["called"]}

    def tell(_: object = None) -> None:
        if telling.due():
            found = document()
            telling.progress(document=found, part=(found["done"], found["variants"]))

    overlay = arguments["overlay"]
    laid_over = None if overlay is None else (Path(overlay).name, Path(overlay).read_bytes())
    run_variants(Job(matrix, store, solve_task, laid_over), _InTurn(telling.stopped), tell, telling.stopped)
    write_matrix(matrix, read_variant_rows(matrix, store), store, catalogue)
    return document()


class _InTurn:
    """This process as the one worker: a variant is solved when it is handed out."""

    count = 1

    def __init__(self, stopped: Callable[[], bool]) -> None:
        self._stopped = stopped

    def submit(self, work: Work, task: VariantTask) -> Future[bytes]:
        """Solve one task now, or take it back where the run is to end."""
        future: Future[bytes] = Future()
        if self._stopped():
            future.cancel()
            return future
        try:
            future.set_result(work(task))
        except Exception as error:
            future.set_exception(error)
        return future

    def died(self, error: BaseException) -> bool:
        """Never: who dies here ends the run with it."""
        return False

    def renew(self) -> None:
        """Do nothing."""

    def check(self) -> None:
        """Do nothing."""

    def close(self, at_once: bool) -> None:
        """Do nothing."""
