"""Who works on the tasks of a run: any executor, or processes of this machine that outlive the death of one."""

from __future__ import annotations

import multiprocessing
import os
import signal
import threading
from concurrent.futures import BrokenExecutor, Executor, Future, ProcessPoolExecutor
from multiprocessing import connection
from multiprocessing.process import BaseProcess
from typing import Final, Protocol

from setwright.solver.uses.variants.task import VariantTask, Work

ONE_CORE: Final = ("OMP_NUM_THREADS", "OPENBLAS_NUM_THREADS", "MKL_NUM_THREADS")
"""What tells numpy's libraries, before they are loaded, to start no threads that another worker would feel."""


class Workers(Protocol):
    """What a run needs of its workers."""

    @property
    def count(self) -> int:
        """How many tasks are worked on at a time."""
        ...

    def submit(self, work: Work, task: VariantTask) -> Future[bytes]:
        """Hand out one task; the future holds its result or what went wrong."""
        ...

    def died(self, error: BaseException) -> bool:
        """Whether an error of a future says that a worker died under its task."""
        ...

    def renew(self) -> None:
        """Be ready for work again after a death."""
        ...

    def check(self) -> None:
        """Raise SetwrightError where no work can be done any more."""
        ...

    def close(self, at_once: bool) -> None:
        """End the workers; `at_once` gives up what they are working on."""
        ...


class ExecutorWorkers:
    """An executor of the caller's, with so many workers; it is neither renewed nor shut down here."""

    def __init__(self, executor: Executor, count: int) -> None:
        self.executor, self.count = executor, count

    def submit(self, work: Work, task: VariantTask) -> Future[bytes]:
        """Hand out one task."""
        try:
            return self.executor.submit(work, task)
        except BrokenExecutor as error:
            failed: Future[bytes] = Future()
            failed.set_exception(error)
            return failed

    def died(self, error: BaseException) -> bool:
        """Whether a worker died: executors of the standard library then break."""
        return isinstance(error, BrokenExecutor)

    def renew(self) -> None:
        """Do nothing: the executor is the caller's."""

    def check(self) -> None:
        """Do nothing: an executor that is gone says so when a task is submitted."""

    def close(self, at_once: bool) -> None:
        """Do nothing: the executor is the caller's."""


class ProcessPool(ExecutorWorkers):
    """Spawned processes, one task each at a time; a broken pool is replaced by a new one."""

    def __init__(self, count: int | None = None) -> None:
        """`count` is the number of processes; every usable core has one where it is left out."""
        self._others = set(multiprocessing.active_children())
        super().__init__(_spawned(count or usable_cores()), count or usable_cores())

    def renew(self) -> None:
        """Replace the pool's processes."""
        self.executor.shutdown(wait=True, cancel_futures=True)
        self.executor = _spawned(self.count)

    def close(self, at_once: bool) -> None:
        """Wait for the running tasks, or kill their processes."""
        if at_once:
            for process in self.processes():
                process.kill()
        self.executor.shutdown(wait=True, cancel_futures=True)

    def processes(self) -> tuple[BaseProcess, ...]:
        """The pool's own processes."""
        return tuple(process for process in multiprocessing.active_children() if process not in self._others)


def usable_cores() -> int:
    """How many cores this process may use."""
    return len(os.sched_getaffinity(0)) if hasattr(os, "sched_getaffinity") else os.cpu_count() or 1


def _spawned(count: int) -> ProcessPoolExecutor:
    return ProcessPoolExecutor(count, mp_context=multiprocessing.get_context("spawn"), initializer=_begin_worker)


def _begin_worker() -> None:
    """Leave Ctrl-C to the parent, keep to one core, print nothing, and end when the parent ends."""
    for name in ONE_CORE:
        os.environ.setdefault(name, "1")
    signal.signal(signal.SIGINT, signal.SIG_IGN)
    nothing = os.open(os.devnull, os.O_WRONLY)
    os.dup2(nothing, 1)
    os.close(nothing)
    parent = multiprocessing.parent_process()
    if parent is not None:
        threading.Thread(target=_end_with, args=(parent.sentinel,), daemon=True).start()


def _end_with(sentinel: int) -> None:
    """Wait for the parent's end, a kill -9 included, and end too: nobody is left to take the result."""
    connection.wait([sentinel])
    os._exit(1)
