"""The worker: the same results with a thread of its own or without, and no exception is lost."""

from __future__ import annotations

import threading

import pytest

from setwright.solver.search.worker import Worker, result

BOTH = pytest.mark.parametrize("workers", [1, 2])


@BOTH
def test_work_is_done_in_the_order_given(workers: int) -> None:
    worker, seen = Worker(workers), list[int]()
    futures = [worker.begin(lambda i=i: seen.append(i) or 10 * i) for i in range(5)]  # type: ignore[misc]
    assert [result(future, lambda: None) for future in futures] == [0, 10, 20, 30, 40]
    assert seen == [0, 1, 2, 3, 4] and worker.end() is None


@BOTH
def test_the_first_fault_is_given_at_the_end_and_to_who_asks(workers: int) -> None:
    def fail(word: str) -> None:
        raise ValueError(word)

    worker = Worker(workers)
    first, _ = (worker.begin(lambda word=word: fail(word)) for word in ("one", "two"))  # type: ignore[misc]
    with pytest.raises(ValueError, match="one"):
        result(first, lambda: None)
    assert str(worker.end()) in ("one",)


def test_a_wait_is_ended_by_the_check_and_what_has_not_begun_is_dropped() -> None:
    worker, go, calls = Worker(2), threading.Event(), list[int]()

    def check() -> None:
        calls.append(1)
        if len(calls) == 3:
            raise KeyboardInterrupt

    waiting = worker.begin(lambda: go.wait(60))
    never = worker.begin(lambda: calls.append(-1))
    with pytest.raises(KeyboardInterrupt):
        result(waiting, check)
    threading.Timer(0.05, go.set).start()
    assert worker.end() is None
    assert never.cancelled() and -1 not in calls
