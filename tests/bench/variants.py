"""The bench of variants: `python -m tests.bench.variants [PART ...]` prints Markdown rows for docs/benchmarks.md.

Parts, all unless named: scaling, dask, rerun, simulation. Run it alone on the machine. Solved cells are the house
template's by --search quick; short cells are reckoned by a hash and sleep 50 ms, as a search without its solver would.
"""

from __future__ import annotations

import sys
import tempfile
import time
from collections.abc import Callable, Iterator
from concurrent.futures import Executor, Future
from pathlib import Path
from statistics import median
from typing import Any

ROOT = Path(__file__).parents[2]
sys.path[:0] = [str(ROOT / ".names"), str(ROOT / "tests" / "variants")]

from cheap_cells import TWO_HUNDRED, cheap, job, nothing, short
from dask_cluster import DaskProcesses

from setwright.catalogue.load import load_catalogue
from setwright.solver.model.limits import SEARCHES
from setwright.solver.reckoning.rules import RULES
from setwright.solver.sheets.variant import solved_variant, stamp_of
from setwright.solver.sheets.variants_files import matrix_files
from setwright.solver.sheets.variants_rows import rows_of
from setwright.solver.uses.variants.cluster import Cluster
from setwright.solver.uses.variants.engines import Engine, Lent, Pool
from setwright.solver.uses.variants.matrix import Cell, Matrix, matrix_of
from setwright.solver.uses.variants.run import Job, run
from setwright.solver.uses.variants.store import Store
from setwright.solver.uses.variants.template import Template, read_template, template_of

HOUSE = ROOT / "scenarios" / "templates" / "house.toml"
NO_OPS = 100_000
THIRTY = {
    "title": "Thirty",
    "vary": {
        "days": [2, 3],
        "minutes": [30, 40, 50],
        "kits": ["bands", "bodyweight-and-bands", "home-dumbbells", "hotel-gym", "machine-gym"],
    },
}
"""Enough cells that what is left for one worker at the end weighs little."""
Row = tuple[str, str]


def timed(act: Callable[[], object]) -> float:
    begun = time.perf_counter()
    act()
    return time.perf_counter() - begun


def opened(folder: Path) -> Store:
    store = Store(folder)
    store.open()
    return store


def solvable(template: Template) -> Matrix:
    catalogue = load_catalogue()
    return matrix_of(template, catalogue, stamp_of(catalogue, SEARCHES["quick"]), tuple(RULES))


def scaling(folder: Path) -> Iterator[Row]:
    """Variants a minute on one worker and on two, the most memory a worker took, and the size of a result."""
    made, seconds = solvable(template_of(THIRTY, "bench")), {}
    for workers in (1, 2):
        pool, store = Pool(workers), opened(folder / f"on-{workers}")
        seconds[workers] = timed(lambda pool=pool, store=store: run(Job(made, store, solved_variant), pool))
        peaks = [peak_mb(process.pid or 0) for process in pool.processes()]
        pool.close(False)
        yield (
            f"variants a minute, {workers} worker(s), start included",
            f"{60 * len(made.cells) / seconds[workers]:.1f}",
        )
        yield f"most memory of a worker, {workers} worker(s), MB", f"{max(peaks):.0f}"
    yield "two workers against one", f"{seconds[1] / seconds[2]:.2f} x"
    sizes = [path.stat().st_size for path in (folder / "on-2").rglob("cells/*/*.json")]
    yield "size of a result, median, bytes", f"{median(sizes):.0f}"
    same = all(path.read_bytes() == (folder / "on-1" / path.relative_to(folder / "on-2")).read_bytes()
               for path in (folder / "on-2").rglob("cells/*/*.json"))  # fmt: skip
    yield "a cell, seconds of one core", f"{seconds[1] / len(made.cells):.1f}"
    yield "same bytes on one worker and two", "yes" if same else "NO"


def peak_mb(pid: int) -> float:
    """The most memory a living process held, in MB (VmHWM of /proc)."""
    lines = Path(f"/proc/{pid}/status").read_text().splitlines()
    return next(int(line.split()[1]) for line in lines if line.startswith("VmHWM")) / 1024


def dask(folder: Path) -> Iterator[Row]:
    """Two hundred short cells on two processes: Dask's and the pool's, both warm."""
    pool = Pool(2)
    run(job(TWO_HUNDRED, folder / "warm", cheap), pool)
    by_pool = timed(lambda: run(job(TWO_HUNDRED, folder / "pool", short), pool))
    pool.close(False)
    with DaskProcesses(folder / "dask", 2) as processes:
        cluster = Cluster(processes.address) if waited(processes) else None
        assert cluster is not None
        run(job(TWO_HUNDRED, folder / "warm-dask", cheap), cluster)
        by_dask = timed(lambda: run(job(TWO_HUNDRED, folder / "cluster", short), cluster))
        cluster.close(False)
    yield "200 short cells, pool of 2, s", f"{by_pool:.2f}"
    yield "200 short cells, Dask with 2 workers, s", f"{by_dask:.2f}"
    yield "Dask against the pool", f"{by_pool / by_dask:.2f} x"


def waited(processes: DaskProcesses) -> bool:
    """Whether both workers are there, after waiting for them."""
    from test_faults import registered

    processes.until(lambda: registered(processes, None))
    return True


def rerun(folder: Path) -> Iterator[Row]:
    """A re-run of an unchanged folder of 200 results of true size, the matrix's files with it."""
    week = opened(folder / "one")
    made = solvable(read_template(HOUSE))
    pool = Pool(1)
    run(Job(made, week, solved_variant, shard=(1, 9)), pool)
    pool.close(False)
    size = max(path.stat().st_size for path in week.folder.rglob("cells/*/*.json"))
    what = job(TWO_HUNDRED, folder / "two-hundred", cheap)
    run(what, Lent(Inline(), 1))
    for cell in what.matrix.cells:
        data = what.store.read(cell.key) or b""
        what.store.write(cell.key, data.rstrip()[:-1] + b',\n "padding": "' + b"x" * (size - len(data)) + b'"}\n')

    def again() -> None:
        fresh = job(TWO_HUNDRED, folder / "two-hundred", cheap)
        assert run(fresh, Lent(Inline(), 1)).kept == 200
        matrix_files(fresh.matrix, rows_of(fresh.matrix, fresh.store))

    yield f"re-run of 200 unchanged results of {size} bytes, s", f"{timed(again):.2f}"
    yield "keeping one result on this disk, flushed, ms", f"{1000 * timed(lambda: keep(what.store)) / 50:.1f}"


def keep(store: Store) -> None:
    for number in range(50):
        store.write(f"ff{number:030d}", b"x" * 30_000)


def simulation(folder: Path) -> Iterator[Row]:
    """The run's own overhead and Dask's: tasks that do nothing, in chains of three, results thrown away."""
    for name, engine in (("no engine", Lent(Inline(), 1)), ("32 threads' worth", Lent(Inline(), 32))):
        seconds = timed(lambda engine=engine: no_ops(folder, engine))
        yield f"{NO_OPS} no-op tasks, {name}, ms a task", f"{1000 * seconds / NO_OPS:.3f}"
    with DaskProcesses(folder / "dask", 2) as processes:
        waited(processes)
        cluster = Cluster(processes.address)
        seconds = timed(lambda: no_ops(folder, cluster))
        cluster.close(False)
    yield f"{NO_OPS} no-op tasks through Dask, 2 workers, ms a task", f"{1000 * seconds / NO_OPS:.2f}"


def no_ops(folder: Path, engine: Engine) -> None:
    assert run(Job(many(NO_OPS), Nowhere(folder), nothing), engine).done == NO_OPS


def many(count: int) -> Matrix:
    """A matrix of so many cells in chains of three."""
    cells = tuple(
        Cell(f"cell {n}", {"minutes": str(n % 3)}, "{}", f"{n:032x}", None if n % 3 == 0 else n - 1)
        for n in range(count)
    )
    return Matrix("", (), None, {}, cells)


class Nowhere(Store):
    """A store that keeps nothing: the disk is measured apart."""

    def read(self, key: str) -> bytes | None:
        return None

    def write(self, key: str, data: bytes) -> None:
        return None


class Inline(Executor):
    """An executor that works at once, in this thread."""

    def submit(self, work: Any, /, *arguments: Any, **more: Any) -> Future[Any]:
        future: Future[Any] = Future()
        future.set_result(work(*arguments, **more))
        return future


PARTS = {"scaling": scaling, "dask": dask, "rerun": rerun, "simulation": simulation}


def main(words: list[str]) -> None:
    """Print a row as each thing is measured."""
    print("| what | measured |\n|---|---|", flush=True)
    for name in words or PARTS:
        with tempfile.TemporaryDirectory(prefix="variants-bench-") as folder:
            for what, value in PARTS[name](Path(folder)):
                print(f"| {what} | {value} |", flush=True)


if __name__ == "__main__":
    main(sys.argv[1:])
