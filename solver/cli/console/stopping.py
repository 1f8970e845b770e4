"""Ctrl-C during a search: the first asks it to stop, the second ends the program."""

from __future__ import annotations

import signal
import threading
from types import FrameType, TracebackType
from typing import Any

from setwright.solver.cli.output import say

STOPPING = "\nstopping: the best week so far follows (Ctrl-C again ends at once)"


class Stopping:
    """A flag that the first SIGINT raises; as a context it puts the old handler back."""

    def __init__(self, said: str = STOPPING) -> None:
        self.said = said
        self.asked = False
        self.old: Any = None

    def __call__(self) -> bool:
        return self.asked

    def __enter__(self) -> Stopping:
        if threading.current_thread() is threading.main_thread():
            self.old = signal.signal(signal.SIGINT, self.heard)
        return self

    def __exit__(
        self, kind: type[BaseException] | None, error: BaseException | None, trace: TracebackType | None
    ) -> None:
        if self.old is not None:
            signal.signal(signal.SIGINT, self.old)

    def heard(self, number: int, frame: FrameType | None) -> None:
        if self.asked:
            raise KeyboardInterrupt
        self.asked = True
        say(self.said)
