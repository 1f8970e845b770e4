"""A search in a thread of its own, which is left behind where it does not end soon after Ctrl-C."""

from __future__ import annotations

import os
import sys
import threading
import time
from collections.abc import Callable
from concurrent.futures import Future, wait
from contextlib import suppress
from typing import Final, Never, TypeVar

from setwright.solver.cli.exit_codes import ExitCode

T = TypeVar("T")
PAUSE: Final = 0.05
"""Seconds between two looks at whether the work is done."""
GRACE: Final = 0.6
"""Seconds that the work has to end by itself after Ctrl-C."""


class LeftBehind(Exception):
    """The work goes on in its thread: only `end_process` may follow, because an engine cannot be interrupted."""


def done_or_left(work: Callable[[], T], stopped: Callable[[], bool]) -> T:
    """What `work` returns or raises; raises LeftBehind where it goes on for `GRACE` seconds after `stopped`.

    So a signal is heard at once, though an engine at work hears none.
    """
    future: Future[T] = Future()
    threading.Thread(target=lambda: _settle(future, work), daemon=True).start()
    asked: float | None = None
    try:
        while not future.done():
            wait((future,), PAUSE)
            if asked is None and stopped():
                asked = time.monotonic()
            if asked is not None and time.monotonic() - asked > GRACE and not future.done():
                raise LeftBehind
    except KeyboardInterrupt:
        raise LeftBehind from None
    return future.result()


def _settle(future: Future[T], work: Callable[[], T]) -> None:
    """Do the work, and hand over its result or its fault."""
    try:
        future.set_result(work())
    except BaseException as fault:
        future.set_exception(fault)


def end_process(code: ExitCode) -> Never:
    """End the process at once, with what was printed, though a thread is still at work: Python would wait for it."""
    for stream in (sys.stdout, sys.stderr):
        with suppress(OSError, ValueError, AttributeError):
            stream.flush()
    os._exit(code)
