"""Who works on the tasks: any executor, or a pool of processes that outlives the death of its workers."""

from __future__ import annotations

import multiprocessing
import os
import signal
import threading
from concurrent.futures import Executor, Future, ProcessPoolExecutor
from multiprocessing import connection
from multiprocessing.process import BaseProcess
from typing import Protocol

from setwright.solver.uses.variants.task import Task, Work

ONE_CORE = ("OMP_NUM_THREADS", "OPENBLAS_NUM_THREADS", "MKL_NUM_THREADS")
"""What tells numpy's libraries, before they are loaded, to start no threads that another worker's cell would feel."""


class Engine(Protocol):
    """What a run needs of its workers."""

    @property
    def workers(self) -> int: ...

    def submit(self, work: Work, task: Task) -> Future[bytes]: ...

    def deadly(self, error: BaseException) -> bool:
        """Whether an error says that a worker died under the task."""
        ...

    def renew(self) -> None:
        """Be ready for work again after a death."""
        ...

    def check(self) -> None:
        """Raise SetwrightError where no work can be done any more."""
        ...

    def close(self, at_once: bool) -> None: ...


class Lent:
    """Any executor of the standard interface, as it was lent; it is not shut down."""

    def __init__(self, executor: Executor, workers: int) -> None:
        self.executor, self.workers = executor, workers

    def submit(self, work: Work, task: Task) -> Future[bytes]:
        return self.executor.submit(work, task)

    def deadly(self, error: BaseException) -> bool:
        return isinstance(error, BrokenWorker)

    def renew(self) -> None:
        return None

    def check(self) -> None:
        return None

    def close(self, at_once: bool) -> None:
        return None


class BrokenWorker(Exception):
    """For lent executors: raised by a task whose worker died."""


class Pool:
    """Spawned processes, one cell each at a time; a broken pool is replaced by a new one."""

    def __init__(self, workers: int | None = None) -> None:
        self.workers = workers or usable_cores()
        self.others = set(multiprocessing.active_children())
        self.executor = self.fresh()

    def fresh(self) -> ProcessPoolExecutor:
        spawn = multiprocessing.get_context("spawn")
        return ProcessPoolExecutor(self.workers, mp_context=spawn, initializer=settle_in)

    def submit(self, work: Work, task: Task) -> Future[bytes]:
        from concurrent.futures.process import BrokenProcessPool

        try:
            return self.executor.submit(work, task)
        except BrokenProcessPool as error:
            failed: Future[bytes] = Future()
            failed.set_exception(error)
            return failed

    def deadly(self, error: BaseException) -> bool:
        from concurrent.futures.process import BrokenProcessPool

        return isinstance(error, BrokenProcessPool)

    def renew(self) -> None:
        self.executor.shutdown(wait=True, cancel_futures=True)
        self.executor = self.fresh()

    def check(self) -> None:
        return None

    def close(self, at_once: bool) -> None:
        """Wait for the running cells, or end their processes."""
        if at_once:
            for process in self.processes():
                process.kill()
        self.executor.shutdown(wait=True, cancel_futures=True)

    def processes(self) -> tuple[BaseProcess, ...]:
        """The pool's own workers."""
        return tuple(p for p in multiprocessing.active_children() if p not in self.others)


def settle_in() -> None:
    """A worker's first act: leave Ctrl-C to the parent, keep to one core, be silent, and end when the parent ends."""
    for name in ONE_CORE:
        os.environ.setdefault(name, "1")
    signal.signal(signal.SIGINT, signal.SIG_IGN)
    nothing = os.open(os.devnull, os.O_WRONLY)
    os.dup2(nothing, 1)
    os.close(nothing)
    parent = multiprocessing.parent_process()
    if parent is not None:
        threading.Thread(target=end_with, args=(parent.sentinel,), daemon=True).start()


def end_with(sentinel: int) -> None:
    """Wait for the parent's end, a kill -9 included, and end too: nobody is left to take the result."""
    connection.wait([sentinel])
    os._exit(1)


def usable_cores() -> int:
    """The cores this process may use."""
    return len(os.sched_getaffinity(0)) if hasattr(os, "sched_getaffinity") else os.cpu_count() or 1
