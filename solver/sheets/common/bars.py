"""A chart in letters: one bar a row, legible without colour and in any font whose letters are equally wide."""

from __future__ import annotations

import math
from collections.abc import Sequence

from setwright.solver.sheets.common.words import wrapped

Mark = tuple[str, float, float | None, bool]
"""(label, value, what it can be at most or None, whether the curve bends here)."""


def bars(marks: Sequence[Mark], title: str, width: int) -> list[str]:
    """The lines of a chart: `#` up to the value, `.` from there to what it can be at most."""
    low = min(0.0, math.floor(min(value for _, value, _, _ in marks)))
    high = max(max(value, most or value) for _, value, most, _ in marks)
    wide = max(len(label) for label, *_ in marks)
    room = max(20, width - wide - 18)
    scale = room / (high - low) if high > low else 0.0
    begins = f"; the bars begin at {low:.0f}" if low < 0 else ""
    lines = wrapped(f"{title} (# reached, . not ruled out{begins})", width)
    for label, value, most, bent in marks:
        reached = round((value - low) * scale)
        dots = round((most - low) * scale) - reached if most is not None else 0
        bar = "#" * reached + "." * dots
        lines.append(f"{label:>{wide}}  {bar} {value:.1f}{'  <- bend' if bent else ''}")
    return lines
