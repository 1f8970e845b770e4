"""A chart in letters: one bar a row, legible without colour and in any font whose letters are equally wide."""

from __future__ import annotations

from collections.abc import Sequence

from setwright.solver.sheets.common.words import wrapped

Mark = tuple[str, float, tuple[float, float], bool]
"""(label, value, the ends of its interval, whether the curve bends here); no value is below nought."""


def bars(marks: Sequence[Mark], title: str, width: int) -> list[str]:
    """The lines of a chart: `#` up to the interval's low end, `=` on to the value, `-` on to the high end."""
    most = max(max(value, high) for _, value, (_, high), _ in marks)
    wide = max(len(label) for label, *_ in marks)
    scale = max(20, width - wide - 18) / most if most > 0 else 0.0
    lines = wrapped(f"{title} (# to the low end of its interval, = to the index, - to the high end)", width)
    for label, value, (low, high), bent in marks:
        sure, reached, ends = (round(max(0.0, v) * scale) for v in (min(low, value), value, max(high, value)))
        bar = "#" * sure + "=" * (reached - sure) + "-" * (ends - reached)
        lines.append(f"{label:>{wide}}  {bar} {value:.1f}{'  <- bend' if bent else ''}")
    return lines
