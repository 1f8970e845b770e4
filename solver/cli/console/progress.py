"""One line on a terminal that tells how the search stands."""

from __future__ import annotations

import math
import os
import sys
import time
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from setwright.solver.search.searching import Progress

UNITS = 10_000
PAUSE = 0.2
"""Seconds between two rewritings."""


class ProgressLine:
    """Best score so far and proven gap, rewritten in place on stderr; silent anywhere but on a terminal."""

    def __init__(self) -> None:
        self.shown = 0
        self.last = 0.0
        self.on = sys.stderr.isatty() and os.environ.get("TERM") != "dumb"

    def __call__(self, progress: Progress) -> None:
        now = time.monotonic()
        if not self.on or now - self.last < PAUSE:
            return
        self.last = now
        self.write(progress_words(progress.score, progress.bound, progress.seconds))

    def write(self, text: str) -> None:
        sys.stderr.write(f"\r{text:<{self.shown}}")
        sys.stderr.flush()
        self.shown = len(text)

    def clear(self) -> None:
        """Leave the terminal as it was."""
        if self.shown:
            sys.stderr.write(f"\r{'':<{self.shown}}\r")
            sys.stderr.flush()
            self.shown = 0


def progress_words(score: float, bound: float, seconds: float) -> str:
    """The state of a search in a few words."""
    if not math.isfinite(score):
        return f"{seconds:.0f} s: no week yet"
    best = f"{seconds:.0f} s: best score {score / UNITS:.1f}"
    if not math.isfinite(bound):
        return f"{best}, nothing proven yet"
    return f"{best}, proven gap {max(0.0, bound - score) / UNITS:.2f} points (Ctrl-C keeps the best week)"
