"""One line on a terminal that tells how the search stands."""

from __future__ import annotations

import math
import os
import sys
import time
from contextlib import suppress
from typing import TYPE_CHECKING, Final

from setwright.solver.cli.console.messages import watched
from setwright.solver.evaluation.finding import UNITS

if TYPE_CHECKING:
    from setwright.solver.search.solve_options import Progress

PAUSE: Final = 0.2
"""Seconds between two rewritings."""


class ProgressLine:
    """Best score so far and proven gap, rewritten in place on standard error; silent anywhere but on a terminal."""

    def __init__(self) -> None:
        self.on = watched() and os.environ.get("TERM") != "dumb"
        self.told: Progress | None = None
        """The last that a search told; None before that."""
        self._width = 0
        self._written = 0.0

    def __call__(self, progress: Progress) -> None:
        """Show the state of a search, unless the last one was shown a moment ago."""
        self.told = progress
        now = time.monotonic()
        if not self.on or now - self._written < PAUSE:
            return
        self._written = now
        self.write(progress_words(progress.score, progress.bound, progress.seconds))

    def write(self, text: str) -> None:
        """Put a text in place of the last one."""
        self._print(f"\r{text:<{self._width}}")
        self._width = len(text)

    def clear(self) -> None:
        """Leave the terminal as it was."""
        if self._width:
            self._print(f"\r{'':<{self._width}}\r")
            self._width = 0

    def _print(self, text: str) -> None:
        with suppress(OSError):
            sys.stderr.write(text)
            sys.stderr.flush()


def progress_words(score: float, bound: float, seconds: float) -> str:
    """The state of a search in a few words; score and bound in units."""
    if not math.isfinite(score):
        return f"{seconds:.0f} s: no week yet"
    best = f"{seconds:.0f} s: best score {score / UNITS:.1f}"
    if not math.isfinite(bound):
        return f"{best}, nothing proven yet"
    return f"{best}, proven gap {max(0.0, bound - score) / UNITS:.2f} points (Ctrl-C keeps the best week)"
