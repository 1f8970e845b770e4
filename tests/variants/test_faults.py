"""kill -9 of a worker, of the command, of the Dask scheduler and of a Dask worker, at seeded moments of a run.

The moments are counts of results, drawn with a fixed seed. After each fault the folder holds whole files only; after
the last restart it holds what an undisturbed run leaves, byte for byte.
"""

from __future__ import annotations

import os
import random
import signal
import subprocess
import sys
import time
from collections.abc import Callable
from pathlib import Path

import pytest
from cheap_variants import TEN, TWO_HUNDRED, contents, deadly, job, unhurried
from dask_cluster import HERE, NAMES, DaskProcesses, tls_files

from setwright.catalogue.faults import SetwrightError, UsageFault
from setwright.solver.uses.variants.dask_workers import DaskWorkers, TlsFiles
from setwright.solver.uses.variants.running import Tally, run_variants
from setwright.solver.uses.variants.workers import ProcessPool

PATIENCE = 60.0


def moments(seed: int, count: int) -> list[int]:
    """So many counts of results at which something is killed."""
    return sorted(random.Random(seed).sample(range(5, 190), count))


def at_moments(when: list[int], act: Callable[[], None]) -> Callable[[Tally], None]:
    """Acts once at each count of results."""

    def tell(tally: Tally) -> None:
        if when and tally.done >= when[0]:
            when.pop(0)
            act()

    return tell


def wait_until(true: Callable[[], object]) -> None:
    end = time.monotonic() + PATIENCE
    while not true():
        assert time.monotonic() < end
        time.sleep(0.01)


# ---- the pool


def test_workers_killed_at_random_moments_lose_nothing(tmp_path: Path, undisturbed: dict[str, bytes]) -> None:
    pool = ProcessPool(2)
    chance = random.Random(7)

    def kill() -> None:
        living = [p for p in pool.processes() if p.is_alive() and p.pid]
        os.kill(chance.choice(living).pid or 0, signal.SIGKILL)

    when = moments(7, 2)
    try:
        tally = run_variants(job(TWO_HUNDRED, tmp_path, unhurried), pool, at_moments(when, kill))
    finally:
        pool.close(False)
    assert when == [] and tally.done == 200
    assert contents(tmp_path) == undisturbed


def test_a_cell_that_kills_its_worker_twice_is_set_aside(tmp_path: Path) -> None:
    pool = ProcessPool(2)
    try:
        tally = run_variants(job(TEN, tmp_path, deadly), pool)
    finally:
        pool.close(False)
    assert (tally.done, tally.troubled, tally.waiting) == (7, 1, 2)
    assert sum(b"worker died 2 times" in data for data in contents(tmp_path).values()) == 1


# ---- the command


def start(folder: Path, *more: str) -> subprocess.Popen[str]:
    path = os.pathsep.join([str(NAMES), str(HERE), os.environ.get("PYTHONPATH", "")])
    command = [sys.executable, str(HERE / "variants_driver.py"), str(folder), *more]
    pipe = subprocess.PIPE
    return subprocess.Popen(command, stdout=pipe, stderr=pipe, text=True, env={**os.environ, "PYTHONPATH": path})


def stored(folder: Path) -> int:
    return sum(1 for _ in folder.glob("results/*/*.json"))


def children(pid: int) -> list[int]:
    return [int(word) for word in Path(f"/proc/{pid}/task/{pid}/children").read_text().split()]


def gone(pid: int) -> bool:
    try:
        return Path(f"/proc/{pid}/stat").read_text().rpartition(")")[2].split()[0] == "Z"
    except OSError:
        return True


def test_the_command_killed_at_random_moments_goes_on_where_it_was(
    tmp_path: Path, undisturbed: dict[str, bytes]
) -> None:
    for moment in moments(11, 2):
        process = start(tmp_path)
        wait_until(lambda moment=moment: stored(tmp_path) >= moment)
        orphans = children(process.pid)
        process.kill()
        process.communicate()
        held = contents(tmp_path)
        assert held.items() <= undisturbed.items() and len(held) < 200
        wait_until(lambda orphans=orphans: all(gone(pid) for pid in orphans))
    said, errors = start(tmp_path).communicate(timeout=PATIENCE)
    assert said.strip() == "200", errors
    assert contents(tmp_path) == undisturbed
    assert list((tmp_path / ".unfinished").iterdir()) == []


def test_a_full_disk_ends_the_run_with_a_clear_error_and_no_half_file(
    tmp_path: Path, undisturbed: dict[str, bytes]
) -> None:
    """The kernel refuses to let files grow beyond a size (RLIMIT_FSIZE) as it refuses on a full disk: in the middle."""
    sizes = sorted(len(data) for data in undisturbed.values())
    process = start(tmp_path, str(sizes[150]))
    _, errors = process.communicate(timeout=PATIENCE)
    assert process.returncode == 1 and "cannot be written: File too large" in errors and "run it again" in errors
    held = contents(tmp_path)
    assert held.items() <= undisturbed.items()
    assert list((tmp_path / ".unfinished").iterdir()) == []
    assert start(tmp_path).communicate(timeout=PATIENCE)[0].strip() == "200"
    assert contents(tmp_path) == undisturbed


# ---- the cluster


def test_a_dask_worker_killed_loses_nothing(tmp_path: Path, undisturbed: dict[str, bytes]) -> None:
    with DaskProcesses(tmp_path / "dask", 2) as dask:
        cluster = connected(dask)

        def kill() -> None:
            dask.workers[-1].kill()
            dask.add_worker()

        when = moments(13, 2)
        try:
            tally = run_variants(job(TWO_HUNDRED, tmp_path / "out", unhurried), cluster, at_moments(when, kill))
        finally:
            cluster.close(False)
    assert when == [] and tally.done == 200
    assert contents(tmp_path / "out") == undisturbed


def test_the_dask_scheduler_killed_is_a_clear_error_and_a_restart_ends_the_run(
    tmp_path: Path, undisturbed: dict[str, bytes]
) -> None:
    what = job(TWO_HUNDRED, tmp_path / "out", unhurried)
    when = moments(17, 1)
    with DaskProcesses(tmp_path / "dask", 2) as dask:
        cluster = connected(dask)
        with pytest.raises(SetwrightError, match=r"scheduler is gone.*what is done is stored"):
            run_variants(what, cluster, at_moments(when, dask.scheduler.kill))
        cluster.close(True)
    held = contents(tmp_path / "out")
    assert when == [] and 0 < len(held) < 200 and held.items() <= undisturbed.items()
    with DaskProcesses(tmp_path / "again", 2) as dask:
        cluster = connected(dask)
        assert run_variants(what, cluster).done == 200
        cluster.close(False)
    assert contents(tmp_path / "out") == undisturbed


def connected(dask: DaskProcesses, tls: TlsFiles | None = None) -> DaskWorkers:
    """A cluster with all of its workers there."""
    dask.until(lambda: registered(dask, tls))
    return DaskWorkers(dask.address, tls)


def registered(dask: DaskProcesses, tls: TlsFiles | None) -> bool:
    try:
        cluster = DaskWorkers(dask.address, tls)
    except SetwrightError:
        return False
    try:
        return cluster.count >= dask.wanted
    finally:
        cluster.close(True)


OTHER = """
import importlib.metadata as metadata
version = metadata.version
metadata.version = lambda name: "9.9" if name == "setwright" else version(name)
"""
WITHOUT = """
import sys
class Lacking:
    def find_spec(self, name, *_):
        if name.partition(".")[0] == "setwright":
            raise ModuleNotFoundError("No module named 'setwright'")
sys.meta_path.insert(0, Lacking())
"""


@pytest.mark.parametrize(
    ("first", "said"),
    [(OTHER, "this worker has setwright 9.9, expected"), (WITHOUT, "cannot load setwright: No module named")],
)
def test_a_dask_worker_of_another_version_or_none_is_refused_before_it_reads_a_task(
    tmp_path: Path, first: str, said: str
) -> None:
    """One that cannot read a task would never answer, and the run never end."""
    with DaskProcesses(tmp_path / "dask", 1) as dask:
        connected(dask).close(True)
        dask.add_worker(first)

        def refused() -> bool:
            try:
                DaskWorkers(dask.address).close(True)
            except SetwrightError as error:
                return said in str(error)
            return False

        dask.until(refused)


def test_a_dask_worker_of_another_version_that_joins_later_ends_the_run(tmp_path: Path) -> None:
    with DaskProcesses(tmp_path / "dask", 1) as dask:
        cluster = connected(dask)

        def one_more(tally: Tally) -> None:
            if len(dask.workers) == 1:
                dask.add_worker(OTHER)
                dask.until(lambda: len(cluster.client.scheduler_info(n_workers=-1)["workers"]) == 2)

        with pytest.raises(SetwrightError, match=r"has setwright 9\.9, expected"):
            run_variants(job(TWO_HUNDRED, tmp_path / "out", unhurried), cluster, one_more)
        cluster.close(True)


def test_tls_connects_and_strangers_do_not(tmp_path: Path) -> None:
    files, others = tls_files(tmp_path / "tls"), tls_files(tmp_path / "others")
    with DaskProcesses(tmp_path / "dask", 1, files) as dask:
        assert dask.address.startswith("tls://")
        cluster = connected(dask, TlsFiles(*files.values()))
        assert run_variants(job(TEN, tmp_path / "out"), cluster).done == 10
        cluster.close(False)
        with pytest.raises(SetwrightError, match="no scheduler answers"):
            DaskWorkers(dask.address, TlsFiles(*others.values()))


def test_addresses_and_tls_files_must_go_together(tmp_path: Path) -> None:
    with pytest.raises(UsageFault, match="is no address"):
        DaskWorkers("127.0.0.1:80")
    with pytest.raises(UsageFault, match="do not go together"):
        DaskWorkers("tls://127.0.0.1:80")
    missing = TlsFiles(*(tmp_path / name for name in ("a", "b", "c")))
    with pytest.raises(UsageFault, match="a: is not there"):
        DaskWorkers("tls://127.0.0.1:80", missing)
