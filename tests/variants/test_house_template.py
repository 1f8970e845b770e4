"""The house template's fifteen weeks, solved by little work: the same bytes on the pool and in shards on Dask."""

from __future__ import annotations

import json
import tomllib
from pathlib import Path

import pytest
from cheap_variants import contents
from dask_cluster import DaskProcesses
from light_search import LITTLE
from test_faults import connected

from setwright.catalogue.load import load_catalogue
from setwright.solver.batch.stamp import stamp_of
from setwright.solver.batch.worker import solve_task
from setwright.solver.rulebook import RULES
from setwright.solver.sheets.document.week_reader import read_week
from setwright.solver.sheets.variants.matrix_export import matrix_files
from setwright.solver.sheets.variants.variant_rows import read_variant_rows
from setwright.solver.uses.variants.matrix import VariantMatrix, matrix_of
from setwright.solver.uses.variants.result_store import ResultStore
from setwright.solver.uses.variants.running import Job, run_variants
from setwright.solver.uses.variants.template import template_of
from setwright.solver.uses.variants.workers import ProcessPool, Workers

TEMPLATE = Path(__file__).parents[2] / "scenarios" / "templates" / "house.toml"


def house(*kits: str) -> VariantMatrix:
    """The template's variants, or those of some of its kits."""
    raw, catalogue = tomllib.loads(TEMPLATE.read_text(encoding="utf-8")), load_catalogue()
    if kits:
        raw["vary"]["kits"] = {kit: raw["vary"]["kits"][kit] for kit in kits}
    return matrix_of(template_of(raw, str(TEMPLATE)), catalogue, stamp_of(catalogue, LITTLE), tuple(RULES))


def run_in(folder: Path, workers: Workers, matrix: VariantMatrix, *shards: tuple[int, int]) -> ResultStore:
    """The results of a run of these shards."""
    store = ResultStore(folder)
    store.open()
    try:
        for shard in shards:
            run_variants(Job(matrix, store, solve_task, shard=shard), workers)
    finally:
        workers.close(False)
    return store


def matrix_bytes(matrix: VariantMatrix, store: ResultStore) -> dict[str, bytes]:
    return matrix_files(matrix, read_variant_rows(matrix, store))


@pytest.mark.slow
def test_the_pool_whole_and_dask_in_shards_give_the_same_bytes(tmp_path: Path) -> None:
    """The pool makes all fifteen, the cluster in two shards those of one kit, the one that clashes among them."""
    pooled, part = run_in(tmp_path / "pool", ProcessPool(2), house(), (1, 1)), house("dumbbells")
    with DaskProcesses(tmp_path / "dask", 2) as dask:
        shared = run_in(tmp_path / "cluster", connected(dask), part, (2, 2), (1, 2))
    pool, cluster = contents(tmp_path / "pool"), contents(tmp_path / "cluster")
    assert len(cluster) == 5 and cluster.items() <= pool.items()
    assert matrix_bytes(part, pooled) == matrix_bytes(part, shared)
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
