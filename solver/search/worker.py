"""A second lane of work beside the first, or the same work at once where there is none."""

from __future__ import annotations

from collections.abc import Callable
from concurrent.futures import Future, ThreadPoolExecutor
from typing import TypeVar

T = TypeVar("T")


class Worker:
    """Work handed over runs in a thread of its own, in the order given; without one it is done when handed over.

    The results are the same either way, as long as nothing that is handed over reads what changes meanwhile.
    """

    def __init__(self, beside: bool) -> None:
        self.pool = ThreadPoolExecutor(1) if beside else None
        self.begun: list[Future[object]] = []

    def begin(self, work: Callable[[], T]) -> Future[T]:
        """A future of what `work` returns."""
        if self.pool:
            future = self.pool.submit(work)
        else:
            future = Future()
            try:
                future.set_result(work())
            except Exception as fault:
                future.set_exception(fault)
        self.begun.append(future)  # type: ignore[arg-type]
        return future

    def end(self) -> BaseException | None:
        """Wait for what has begun, drop what has not, and give the first thing that went wrong."""
        if self.pool:
            # A thread still inside an engine when Python ends would abort the process.
            self.pool.shutdown(wait=True, cancel_futures=True)
        ended = (future for future in self.begun if not future.cancelled())
        return next((fault for future in ended if (fault := future.exception())), None)


def result(future: Future[T], check: Callable[[], None]) -> T:
    """What the work gave; `check` is asked again and again while it runs, and may end the wait by raising."""
    while True:
        try:
            return future.result(0.1)
        except TimeoutError:
            if future.done():
                return future.result()
            check()
