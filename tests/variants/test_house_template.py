"""The house template's fifteen weeks, solved by little work: the same bytes on the pool and in shards on Dask."""

from __future__ import annotations

import json
from dataclasses import replace
from pathlib import Path

import pytest
from cheap_variants import contents
from dask_cluster import DaskProcesses
from test_faults import connected

from setwright.catalogue.load import load_catalogue
from setwright.solver.batch.stamp import stamp_of
from setwright.solver.batch.worker import solve_task
from setwright.solver.rulebook import RULES
from setwright.solver.search.limits import SEARCHES
from setwright.solver.sheets.document.week_reader import read_week
from setwright.solver.sheets.variants.matrix_export import matrix_files
from setwright.solver.sheets.variants.variant_rows import read_variant_rows
from setwright.solver.uses.variants.matrix import VariantMatrix, matrix_of
from setwright.solver.uses.variants.result_store import ResultStore
from setwright.solver.uses.variants.running import Job, run_variants
from setwright.solver.uses.variants.template import read_template
from setwright.solver.uses.variants.workers import ProcessPool, Workers

TEMPLATE = Path(__file__).parents[2] / "scenarios" / "templates" / "house.toml"
LITTLE = replace(SEARCHES["quick"], rounds=1, work=0.05, columns=25, nodes=0, pattern_nodes=0)


def house() -> VariantMatrix:
    catalogue = load_catalogue()
    return matrix_of(read_template(TEMPLATE), catalogue, stamp_of(catalogue, LITTLE), tuple(RULES))


def solved_in(folder: Path, workers: Workers, *shards: tuple[int, int]) -> dict[str, bytes]:
    """Every file of a run of these shards, the matrix with them."""
    store = ResultStore(folder)
    store.open()
    matrix = house()
    try:
        for shard in shards:
            run_variants(Job(matrix, store, solve_task, shard=shard), workers)
    finally:
        workers.close(False)
    return contents(folder) | matrix_files(matrix, read_variant_rows(matrix, store))


@pytest.mark.slow
def test_the_pool_whole_and_dask_in_shards_give_the_same_bytes(tmp_path: Path) -> None:
    pool = solved_in(tmp_path / "pool", ProcessPool(2), (1, 1))
    with DaskProcesses(tmp_path / "dask", 2) as dask:
        cluster = solved_in(tmp_path / "cluster", connected(dask), (2, 2), (1, 2))
    assert pool == cluster
    documents = [json.loads(data) for name, data in pool.items() if name.endswith(".json")]
    assert len(documents) == 15
    assert [d["name"] for d in documents if d["end"] == "clash"] == ["4 x 60, dumbbells"]
    assert sum(d["end"] == "solved" for d in documents) == 14
    for document in documents:
        if document["week"]:
            read_week(document["week"], load_catalogue())


def test_the_house_template_is_fifteen_variants() -> None:
    sizes = {(c.values["days"], c.values["minutes"]) for c in house().variants}
    assert sizes == {("2", "30"), ("2", "45"), ("3", "45"), ("3", "60"), ("4", "60")}
    assert len(house().variants) == 15
