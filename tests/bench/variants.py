"""The bench of variants: `python -m tests.bench.variants [PART ...]` prints Markdown rows for docs/benchmarks.md.

Parts, all unless named: scaling, dask, rerun, simulation, plan (from what the other parts measured). Run it alone on
the machine; all parts take under 12 minutes. Solved cells are by --search quick; short cells are reckoned by a hash and
sleep 50 ms, as a search without its solver would.
"""

from __future__ import annotations

import heapq
import os
import random
import subprocess
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

from cheap_variants import TWO_HUNDRED, cheap, hollow, job, short
from dask_cluster import DaskProcesses

from setwright.catalogue.load import load_catalogue
from setwright.solver.batch.stamp import stamp_of
from setwright.solver.batch.worker import solve_task
from setwright.solver.rulebook import RULES
from setwright.solver.search.limits import SEARCHES
from setwright.solver.uses.variants.dask_workers import DaskWorkers
from setwright.solver.uses.variants.matrix import Variant, VariantMatrix, matrix_of
from setwright.solver.uses.variants.result_store import ResultStore
from setwright.solver.uses.variants.running import Job, run_variants
from setwright.solver.uses.variants.task import VariantTask
from setwright.solver.uses.variants.template import Template, template_of
from setwright.solver.uses.variants.workers import ExecutorWorkers, ProcessPool, Workers

HOUSE = ROOT / "scenarios" / "templates" / "house.toml"
NO_OPS = 100_000
MOST_SECONDS = 300.0
"""Dask's no-op tasks end here, however many were done: the cost of one is known long before."""
MACHINES, CORES = 50, 16
FIGURES: dict[str, float] = {}
"""What was measured, for the plan: seconds of a cell, ms of a task's handing out and of a write, bytes, MB."""
THIRTY = {
    "title": "Thirty",
    "vary": {
        "days": [2, 3],
        "minutes": [30, 40, 50],
        "kits": ["bands", "bodyweight-and-bands", "home-dumbbells", "hotel-gym", "machine-gym"],
    },
}
"""Enough cells that what is left for one worker at the end weighs little."""
VariantRow = tuple[str, str]
RERUN = """title = "Rerun"
[vary]
days = [1, 2]
minutes = [20, 30, 40, 50, 60]
kits = ["bands", "bodyweight-and-bands", "home-dumbbells", "hotel-gym"]
"""
"""Forty weeks of true size."""


def timed(act: Callable[[], object]) -> float:
    begun = time.perf_counter()
    act()
    return time.perf_counter() - begun


def opened(folder: Path) -> ResultStore:
    store = ResultStore(folder)
    store.open()
    return store


def solvable(template: Template) -> VariantMatrix:
    catalogue = load_catalogue()
    return matrix_of(template, catalogue, stamp_of(catalogue, SEARCHES["quick"]), tuple(RULES))


def scaling(folder: Path) -> Iterator[VariantRow]:
    """Variants a minute on one worker and on two, the most memory a worker took, and the size of a result."""
    made, seconds = solvable(template_of(THIRTY, "bench")), {}
    for workers in (1, 2):
        pool, store = ProcessPool(workers), opened(folder / f"on-{workers}")
        seconds[workers] = timed(lambda pool=pool, store=store: run_variants(Job(made, store, solve_task), pool))
        peaks = [peak_mb(process.pid or 0) for process in pool.processes()]
        pool.close(False)
        yield (
            f"variants a minute, {workers} worker(s), start included",
            f"{60 * len(made.variants) / seconds[workers]:.1f}",
        )
        yield f"most memory of a worker, {workers} worker(s), MB", f"{max(peaks):.0f}"
        FIGURES["mb"] = max(peaks)
    yield "two workers against one", f"{seconds[1] / seconds[2]:.2f} x"
    sizes = [path.stat().st_size for path in (folder / "on-2").rglob("results/*/*.json")]
    FIGURES["bytes"], FIGURES["cell_s"] = median(sizes), seconds[1] / len(made.variants)
    yield "size of a result, median, bytes", f"{median(sizes):.0f}"
    same = all(path.read_bytes() == (folder / "on-1" / path.relative_to(folder / "on-2")).read_bytes()
               for path in (folder / "on-2").rglob("results/*/*.json"))  # fmt: skip
    yield "a cell, seconds of one core", f"{seconds[1] / len(made.variants):.1f}"
    yield "same bytes on one worker and two", "yes" if same else "NO"


def peak_mb(pid: int) -> float:
    """The most memory a living process held, in MB (VmHWM of /proc)."""
    lines = Path(f"/proc/{pid}/status").read_text().splitlines()
    return next(int(line.split()[1]) for line in lines if line.startswith("VmHWM")) / 1024


def dask(folder: Path) -> Iterator[VariantRow]:
    """Two hundred short cells on two processes: Dask's and the pool's, both warm."""
    pool = ProcessPool(2)
    run_variants(job(TWO_HUNDRED, folder / "warm", cheap), pool)
    by_pool = timed(lambda: run_variants(job(TWO_HUNDRED, folder / "pool", short), pool))
    pool.close(False)
    with DaskProcesses(folder / "dask", 2) as processes:
        cluster = DaskWorkers(processes.address) if waited(processes) else None
        assert cluster is not None
        run_variants(job(TWO_HUNDRED, folder / "warm-dask", cheap), cluster)
        by_dask = timed(lambda: run_variants(job(TWO_HUNDRED, folder / "cluster", short), cluster))
        cluster.close(False)
    yield "200 short cells, pool of 2, s", f"{by_pool:.2f}"
    yield "200 short cells, Dask with 2 workers, s", f"{by_dask:.2f}"
    yield "Dask against the pool", f"{by_pool / by_dask:.2f} x"


def waited(processes: DaskProcesses) -> bool:
    """Whether both workers are there, after waiting for them."""
    from test_faults import registered

    processes.until(lambda: registered(processes, None))
    return True


def rerun(folder: Path) -> Iterator[VariantRow]:
    """`setwright variants run` again on a folder in which nothing is missing, start and pages of weeks included."""
    words = ["run", str(folder / "weeks.toml"), "-o", str(folder / "weeks"), "--search", "quick"]
    (folder / "weeks.toml").write_text(RERUN, encoding="utf-8")
    command(words)
    sizes = [path.stat().st_size for path in (folder / "weeks").rglob("results/*/*.json")]
    seconds = sorted(timed(lambda: command(words)) for _ in range(3))
    yield f"`variants run` again, {len(sizes)} unchanged results, s: least, middle, most of 3", spread(seconds)
    tables = [path.stat().st_mtime_ns for path in (folder / "weeks" / "weeks").iterdir()]
    yield "pages of weeks that stand beside them", f"{len(tables)}"
    FIGURES["write_ms"] = 1000 * timed(lambda: keep(ResultStore(folder / "weeks"))) / 50
    yield "keeping one result on this disk, flushed, ms", f"{FIGURES['write_ms']:.1f}"


def command(words: list[str]) -> None:
    """The command as a user runs it, in a process of its own."""
    subprocess.run(
        [sys.executable, "-m", "setwright", "variants", *words],
        check=True,
        capture_output=True,
        env={**os.environ, "PYTHONPATH": str(ROOT / ".names")},
    )


def spread(seconds: list[float]) -> str:
    return ", ".join(f"{one:.1f}" for one in seconds)


def keep(store: ResultStore) -> None:
    for number in range(50):
        store.write(f"ff{number:030d}", b"x" * 30_000)


def simulation(folder: Path) -> Iterator[VariantRow]:
    """The run's own overhead and Dask's: tasks that do nothing, chains of three, results of true size thrown away."""
    loop = timed(lambda: no_ops(folder, ExecutorWorkers(Inline(), 1)))
    FIGURES["loop_ms"] = 1000 * loop / NO_OPS
    yield f"{NO_OPS} no-op tasks, no workers, making of results included, ms a task", f"{FIGURES['loop_ms']:.2f}"
    with DaskProcesses(folder / "dask", 2) as processes:
        waited(processes)
        cluster, begun = DaskWorkers(processes.address), time.perf_counter()
        done = no_ops(folder, cluster, lambda: time.perf_counter() - begun > MOST_SECONDS)
        seconds = time.perf_counter() - begun
        cluster.close(False)
    FIGURES["task_ms"] = 1000 * seconds / done
    yield f"{done} no-op tasks through Dask, 2 workers, ms a task", f"{FIGURES['task_ms']:.2f}"


def no_ops(folder: Path, workers: Workers, stopped: Callable[[], bool] = lambda: False) -> int:
    """How many of the no-op tasks were done."""
    return run_variants(Job(many(NO_OPS), Nowhere(folder), hollow), workers, stopped=stopped).done


def many(count: int) -> VariantMatrix:
    """A matrix of so many cells in chains of three."""
    return VariantMatrix("", (), None, {}, tuple(numbered(n) for n in range(count)))


def numbered(n: int) -> Variant:
    return Variant(f"cell {n}", {"minutes": str(n % 3)}, "{}", f"{n:032x}", None if n % 3 == 0 else n - 1)


class Nowhere(ResultStore):
    """A store that keeps nothing but which results it was given, and makes them anew: the disk is measured apart."""

    def __init__(self, folder: Path) -> None:
        super().__init__(folder)
        self.given: set[str] = set()

    def read(self, key: str) -> bytes | None:
        cell = numbered(int(key, 16))
        feasibility_only = VariantTask(cell.name, cell.values, cell.brief, key, None, {}, None, None, None)
        return hollow(feasibility_only) if key in self.given else None

    def write(self, key: str, data: bytes) -> None:
        self.given.add(key)


def plan(folder: Path) -> Iterator[VariantRow]:
    """A run of 100,000 cells over 50 machines, reckoned from what was measured and simulated."""
    lacking = {"cell_s", "task_ms", "write_ms", "bytes", "mb"} - FIGURES.keys()
    if lacking:
        yield "plan", "needs scaling, rerun and simulation in the same call"
        return
    workers, cell, task = MACHINES * CORES, FIGURES["cell_s"], FIGURES["task_ms"] / 1000
    yield "solving, min", f"{NO_OPS} x {cell:.1f} / {workers} / 60 = {NO_OPS * cell / workers / 60:.1f}"
    yield "handing out beside it, min", f"{NO_OPS} x {task:.4f} / 60 = {NO_OPS * task / 60:.1f}"
    write = FIGURES["write_ms"] / 1000
    yield "storing beside it, min", f"{NO_OPS} x {write:.4f} / 60 = {NO_OPS * write / 60:.1f}"
    yield "workers that one scheduler keeps busy", f"{cell:.1f} / {task:.4f} = {cell / task:.0f}"
    yield "the same, simulated: min", f"{fleet(workers, cell, task) / 60:.1f}"
    yield "folder, GB", f"{NO_OPS} x {FIGURES['bytes']:.0f} / 1e9 = {NO_OPS * FIGURES['bytes'] / 1e9:.1f}"
    yield "memory of a machine_name, GB", f"{CORES} x {FIGURES['mb']:.0f} / 1000 = {CORES * FIGURES['mb'] / 1000:.1f}"


def fleet(workers: int, cell: float, task: float) -> float:
    """Seconds until so many workers, served one after the other by one scheduler, have done all cells.

    Chains of three; a cell takes 0.2 to 1.8 of the mean, by a fixed seed; each costs the scheduler `task` seconds.
    """
    chance, scheduler, end = random.Random(1), 0.0, 0.0
    free = [0.0] * workers
    ready = [(0.0, 3)] * (NO_OPS // 3)
    while ready:
        able, left = heapq.heappop(ready)
        scheduler = max(scheduler, able, heapq.heappop(free)) + task
        done = scheduler + cell * chance.uniform(0.2, 1.8)
        heapq.heappush(free, done)
        end = max(end, done)
        if left > 1:
            heapq.heappush(ready, (done, left - 1))
    return end


class Inline(Executor):
    """An executor that works at once, in this thread."""

    def submit(self, work: Any, /, *arguments: Any, **more: Any) -> Future[Any]:
        future: Future[Any] = Future()
        future.set_result(work(*arguments, **more))
        return future


PARTS = {"scaling": scaling, "dask": dask, "rerun": rerun, "simulation": simulation, "plan": plan}


def main(words: list[str]) -> None:
    """Print a row as each thing is measured."""
    print("| what | measured |\n|---|---|", flush=True)
    for name in words or PARTS:
        with tempfile.TemporaryDirectory(prefix="variants-bench-") as folder:
            for what, value in PARTS[name](Path(folder)):
                print(f"| {what} | {value} |", flush=True)


if __name__ == "__main__":
    main(sys.argv[1:])
