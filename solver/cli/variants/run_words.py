"""How a run of variants stands, in words: a line on a terminal while it goes on, and one at its end."""

from __future__ import annotations

import time
from typing import TYPE_CHECKING, Final

from setwright.solver.cli.console.messages import columns
from setwright.solver.cli.console.progress import ProgressLine

if TYPE_CHECKING:
    from setwright.solver.uses.variants.running import Tally

PAUSE: Final = 0.5
"""Seconds between two rewritings."""


def end_words(tally: Tally, shard: tuple[int, int]) -> str:
    """The end of a run in a line."""
    part = f"shard {shard[0]}/{shard[1]}: " if shard != (1, 1) else ""
    text = f"{part}{tally.variants} variants: {tally.solved} solved, {tally.impossible} impossible"
    more = {"without a week": tally.no_week, "to be tried again": tally.troubled, "not begun": tally.left}
    text += "".join(f", {count} {words}" for words, count in more.items() if count)
    return f"{text}; {tally.kept} were there before"


class RunProgress:
    """The run's progress, rewritten in place on a terminal."""

    def __init__(self) -> None:
        self._line = ProgressLine()
        self._begun = time.monotonic()
        self._written = 0.0

    def __call__(self, tally: Tally) -> None:
        """Show how the run stands, unless that was shown a moment ago."""
        now = time.monotonic()
        if self._line.on and now - self._written >= PAUSE:
            self._written = now
            self._line.write(_progress_words(tally, now - self._begun)[: max(20, columns() - 1)])

    def clear(self) -> None:
        """Leave the terminal as it was."""
        self._line.clear()


def _progress_words(tally: Tally, seconds: float) -> str:
    """Done, running, impossible and left; the rate and the time left once something was done in these seconds."""
    from setwright.solver.sheets.variants.plan_screen import duration

    done = tally.done + tally.troubled - tally.kept
    text = f"{tally.done} of {tally.variants} done, {tally.running} running, {tally.impossible} impossible"
    text += f", {tally.left} left"
    if done < 1 or seconds <= 0:
        return text
    rate = done / seconds
    return f"{text}; {60 * rate:.1f} a minute, about {duration(tally.left / rate)} to go"
