"""A run of a template, as a task of a search process: variants one after the other, each stored as it is found."""

from __future__ import annotations

from collections.abc import Mapping
from concurrent.futures import ThreadPoolExecutor
from pathlib import Path
from typing import Any

from setwright.catalogue.entries import Catalogue
from setwright.solver.batch.matrix_folder import write_matrix
from setwright.solver.batch.planned_matrix import matrix_of_text
from setwright.solver.batch.worker import solve_task
from setwright.solver.desk.searches.task import Telling
from setwright.solver.desk.variants.file_names import RUN_OF
from setwright.solver.sheets.variants.matrix_document import matrix_document
from setwright.solver.sheets.variants.variant_rows import read_variant_rows
from setwright.solver.uses.variants.manifest import write_manifest
from setwright.solver.uses.variants.result_store import ResultStore
from setwright.solver.uses.variants.running import Job, Tally, run_variants
from setwright.solver.uses.variants.workers import ExecutorWorkers


def run_template(arguments: Mapping[str, Any], catalogue: Catalogue, telling: Telling) -> Mapping[str, Any]:
    """The matrix document, with the template's name, of the text `template` run into `folder` by `search`.

    Raises UsageFault for a template that cannot be read, SetwrightError where the folder cannot be written.
    """
    matrix = matrix_of_text(arguments["template"], catalogue, arguments["search"])
    store = ResultStore(Path(arguments["folder"]))
    store.open()
    write_manifest(store, matrix)
    store.put(store.folder / RUN_OF, arguments["template"].encode())

    def document() -> dict[str, Any]:
        return {**matrix_document(matrix, read_variant_rows(matrix, store)), "name": arguments["called"]}

    told = -1

    def tell(tally: Tally) -> None:
        nonlocal told
        done = tally.variants - tally.left
        if done != told and telling.due():
            told = done
            telling.progress(document=document(), part=(done, tally.variants))

    overlay = arguments["overlay"]
    laid_over = None if overlay is None else (Path(overlay).name, Path(overlay).read_bytes())
    with ThreadPoolExecutor(1) as in_turn:
        job = Job(matrix, store, solve_task, laid_over)
        run_variants(job, ExecutorWorkers(in_turn, 1), tell, telling.stopped)
    write_matrix(matrix, read_variant_rows(matrix, store), store, catalogue)
    return document()
