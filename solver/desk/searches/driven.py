"""One search process as the desk's side leads it: started, given a task, heard, told to stop, and ended."""

from __future__ import annotations

import multiprocessing
import threading
from collections.abc import Iterator
from typing import Any, Final, Generic, TypeVar

from setwright.solver.desk.searches.process import wait_for_tasks
from setwright.solver.desk.searches.task import Task

Work = TypeVar("Work")
PATIENCE: Final = 1.0
"""Seconds that a search that was told to stop is given to hand over its best week."""
MOST_TASKS: Final = 50
"""Tasks that one process does before another takes its place, so that its memory does not grow."""
STARTING: Final = threading.Lock()
"""Processes are started one at a time: Python reckons with one thread that does it."""


class Driven(Generic[Work]):
    """A process and what it has in hand. All but `start` and `told` are called under the lock of its owner."""

    def __init__(self) -> None:
        context = multiprocessing.get_context("spawn")
        self.work: Work | None = None
        """What it has in hand."""
        self.leaving = False
        """Whether it is given nothing any more."""
        self._tasks = 0
        self._connection, self._theirs = context.Pipe()
        # A byte of shared memory and no Event: an Event has a lock, which a process ended by force may hold for ever.
        self._stop: Any = context.RawValue("b", 0)
        self.handle: Any = context.Process(target=wait_for_tasks, args=(self._theirs, self._stop), daemon=True)

    def start(self) -> bool:
        """Start it and wait until it is ready for tasks; whether it is."""
        try:
            with STARTING:
                self.handle.start()
        except OSError:  # the machine has no room for another process
            return False
        finally:
            self._theirs.close()
        return self._heard() is not None

    def is_fit(self) -> bool:
        """Whether it can be given a task: it goes on, and has not done enough already."""
        return not self.leaving and self._tasks < MOST_TASKS and bool(self.handle.is_alive())

    def take(self, work: Work) -> None:
        """Take work in hand."""
        self.work, self._tasks = work, self._tasks + 1
        self._stop.value = 0

    def told(self, task: Task) -> Iterator[dict[str, Any]]:
        """Send the task of the work in hand, and hear what it tells until it is over or the process gone."""
        try:
            self._connection.send(task)
        except OSError:
            return
        while (said := self._heard()) is not None:
            yield said

    def stop(self, lock: threading.Condition) -> None:
        """Tell it to end what it has in hand; where that goes on for long, the process is ended by force."""
        self._stop.value = 1
        work = self.work

        def end() -> None:
            with lock:
                if self.work is work:
                    self.kill()

        timer = threading.Timer(PATIENCE, end)
        timer.daemon = True
        timer.start()

    def kill(self) -> None:
        """End it at once, if it was started."""
        self.leaving = True
        if self.handle.pid is not None:
            self.handle.kill()

    def _heard(self) -> dict[str, Any] | None:
        """What it says next; None where it is gone."""
        try:
            said: dict[str, Any] = self._connection.recv()
        except (EOFError, OSError):
            return None
        return said
