"""How a run of variants stands, in words: a line on a terminal while it goes on, and one at its end."""

from __future__ import annotations

import time
from typing import TYPE_CHECKING

from setwright.solver.cli.output import columns
from setwright.solver.cli.progress import ProgressLine

if TYPE_CHECKING:
    from setwright.solver.uses.variants.run import Tally


def words_of(tally: Tally, part: tuple[int, int]) -> str:
    """The end of a run in a line."""
    shard = f"shard {part[0]}/{part[1]}: " if part != (1, 1) else ""
    said = f"{shard}{tally.cells} variants: {tally.solved} solved, {tally.impossible} impossible"
    more = {"without a week": tally.no_week, "to be tried again": tally.troubled, "not begun": tally.left}
    said += "".join(f", {count} {words}" for words, count in more.items() if count)
    return f"{said}; {tally.kept} were there before"


class Line:
    """The run's progress, rewritten in place on a terminal."""

    def __init__(self) -> None:
        self.line = ProgressLine()
        self.begun = time.monotonic()
        self.last = 0.0

    def __call__(self, tally: Tally) -> None:
        now = time.monotonic()
        if self.line.on and now - self.last >= 0.5:
            self.last = now
            self.line.write(progress_words(tally, now - self.begun)[: max(20, columns() - 1)])

    def clear(self) -> None:
        self.line.clear()


def progress_words(tally: Tally, seconds: float) -> str:
    """Done, running, impossible and left; the rate and the time left once something was done."""
    done = tally.done + tally.troubled - tally.kept
    said = f"{tally.done} of {tally.cells} done, {tally.running} running, {tally.impossible} impossible"
    said += f", {tally.left} left"
    if done < 1 or seconds <= 0:
        return said
    rate = done / seconds
    from setwright.solver.sheets.variants.plan_text import duration

    return f"{said}; {60 * rate:.1f} a minute, about {duration(tally.left / rate)} to go"
