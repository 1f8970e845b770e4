"""A second thread for work beside the first, or the same work at once where there is one thread only."""

from __future__ import annotations

from collections.abc import Callable
from concurrent.futures import Future, ThreadPoolExecutor
from typing import TypeVar

T = TypeVar("T")
PAUSE = 0.1
"""Seconds between two looks at whether a wait is to end."""


class Worker:
    """Work handed over runs in a thread of its own, in the order given; with one worker it is done when handed over.

    The results are the same either way, as long as nothing that is handed over reads what changes meanwhile.
    """

    def __init__(self, workers: int) -> None:
        """`workers` counts the caller's thread: 2 starts another one, 1 does not."""
        self._pool = ThreadPoolExecutor(1) if workers > 1 else None
        self._begun: list[Future[object]] = []

    def begin(self, work: Callable[[], T]) -> Future[T]:
        """A future of what `work` returns, or of what it raises."""
        if self._pool:
            future = self._pool.submit(work)
        else:
            future = Future()
            try:
                future.set_result(work())
            except Exception as fault:
                future.set_exception(fault)
        self._begun.append(future)  # type: ignore[arg-type]
        return future

    def end(self) -> BaseException | None:
        """Wait for what has begun, drop what has not, and return the first exception that the work raised."""
        if self._pool:
            # A thread still inside an engine when Python ends would abort the process.
            self._pool.shutdown(wait=True, cancel_futures=True)
        ended = (future for future in self._begun if not future.cancelled())
        return next((fault for future in ended if (fault := future.exception())), None)


def result(future: Future[T], check: Callable[[], None]) -> T:
    """What the work returns; `check` is called again and again while it runs, and may end the wait by raising."""
    while True:
        try:
            return future.result(PAUSE)
        except TimeoutError:
            if future.done():
                return future.result()
            check()
