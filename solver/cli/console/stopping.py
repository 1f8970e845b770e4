"""Ctrl-C during a search: the first asks it to stop, the second ends the program."""

from __future__ import annotations

import signal
import threading
from types import FrameType, TracebackType
from typing import Any, Final

from setwright.solver.cli.console.messages import say

SEASON_FOLLOWS: Final = "\nstopping: the best season so far follows, if there is one (Ctrl-C again ends at once)"
BEST_FOLLOWS: Final = "\nstopping: the best week so far follows (Ctrl-C again ends at once)"


class Stopping:
    """Whether Ctrl-C was pressed since the context was entered; leaving it puts the old handler back."""

    def __init__(self, message: str = BEST_FOLLOWS) -> None:
        """`message` is what the first Ctrl-C says."""
        self.asked = False
        self._message = message
        self._old_handler: Any = None

    def __call__(self) -> bool:
        """Whether the search is to stop."""
        return self.asked

    def __enter__(self) -> Stopping:
        if threading.current_thread() is threading.main_thread():
            self._old_handler = signal.signal(signal.SIGINT, self._on_interrupt)
        return self

    def __exit__(
        self, kind: type[BaseException] | None, error: BaseException | None, trace: TracebackType | None
    ) -> None:
        if self._old_handler is not None:
            signal.signal(signal.SIGINT, self._old_handler)

    def _on_interrupt(self, number: int, frame: FrameType | None) -> None:
        if self.asked:
            raise KeyboardInterrupt
        self.asked = True
        say(self._message)
