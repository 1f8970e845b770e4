"""Weekly sets against their bands, as SVG in one ink."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Protocol

from setwright.solver.sheets.charts.drawing import (
    SMALL,
    ChartStyle,
    axis,
    box,
    clipped,
    label,
    number,
    picture,
    rule,
    ticks,
)
from setwright.solver.sheets.common.words import span

ROW, HEAD = 19.0, 24.0


class Muscle(Protocol):
    """What is drawn of a muscle."""

    @property
    def name(self) -> str:
        """In the client's language."""
        ...

    @property
    def emphasis(self) -> str:
        """priority, normal, hold or counted."""
        ...

    @property
    def sets(self) -> float:
        """Weekly sets, indirect work counted in part."""
        ...

    @property
    def band(self) -> tuple[float, float | None] | None:
        """Lowest and highest weekly sets aimed at; None for a muscle without a band."""
        ...


def bands_chart(muscles: Sequence[Muscle], style: ChartStyle | None = None) -> str:
    """Weekly sets of each muscle as a bar over its hatched band, the numbers beside it; muscles without one outlined.

    Priority muscles stand in bold; a bar outside its band says so in words.
    """
    style = style or ChartStyle(key="bands")
    left, right = 148.0, style.width - 80.0
    at = ticks(max([1.0, *(m.sets for m in muscles), *(edge for m in muscles for edge in m.band or () if edge)]))
    scale = (right - left) / at[-1]
    foot = HEAD + ROW * len(muscles) + 4
    marks = [label(1, 12, style.word("Muscle"), size=SMALL), label(left - 8, 12, style.word("Sets"), "end", SMALL)]
    marks.append(label(right + 8, 12, style.word("Band"), size=SMALL))
    marks += [rule(style, left + t * scale, HEAD - 4, left + t * scale, foot, "grid") for t in at]
    for place, muscle in enumerate(muscles):
        marks += _bands_row(style, muscle, HEAD + ROW * place, left, right, scale)
    marks += axis(style, at, left, scale, foot, style.word("sets a week"))
    marks += _bands_key(style, muscles, foot + 42)
    said = "; ".join(muscle_said(style, muscle) for muscle in muscles)
    return picture(style, foot + 50, style.word("Weekly sets of each muscle against its band"), said, marks)


def _bands_row(style: ChartStyle, muscle: Muscle, top: float, left: float, right: float, scale: float) -> list[str]:
    """One muscle: name, number, band, bar, band in figures."""
    base, marks = top + 13, []
    bold = muscle.emphasis == "priority"
    if muscle.band is not None:
        low, high = muscle.band
        ends = left + low * scale, right if high is None else left + high * scale
        marks.append(box(style, ends[0], top + 1, ends[1] - ends[0], ROW - 4, "hatch", "band"))
        marks += [rule(style, ends[0], top + 1, ends[0], top + ROW - 3, "edge")]
        marks += [rule(style, ends[1], top + 1, ends[1], top + ROW - 3, "edge")] if high is not None else []
    fill = "solid" if muscle.band is not None else "none"
    marks.append(box(style, left, top + 5, muscle.sets * scale, ROW - 12, fill, "bar"))
    marks.append(label(1, base, clipped(muscle.name, left - 38, bold=bold), bold=bold))
    marks.append(label(left - 8, base, number(muscle.sets), "end", bold=bold))
    marks.append(label(right + 8, base, _band_said(style, muscle), size=SMALL))
    return marks


def _bands_key(style: ChartStyle, muscles: Sequence[Muscle], base: float) -> list[str]:
    """What the marks mean; only marks that are drawn."""
    marks = [
        box(style, 1, base - 8, 16, 7, "solid", "key"),
        label(22, base, style.word("sets"), size=SMALL),
        box(style, 57, base - 10, 16, 11, "hatch", "key"),
        label(78, base, style.word("band"), size=SMALL),
    ]
    x = 117.0
    if any(muscle.band is None for muscle in muscles):
        marks.append(box(style, x, base - 8, 16, 7, "none", "key"))
        marks.append(label(x + 21, base, style.word("counted along"), size=SMALL))
        x = 223.0
    if any(muscle.emphasis == "priority" for muscle in muscles):
        marks.append(label(x, base, style.word("Bold: priority"), size=SMALL, bold=True))
    return marks


def _band_said(style: ChartStyle, muscle: Muscle) -> str:
    """The band in figures, and whether the bar lies outside it."""
    if muscle.band is None:
        return ""
    low, high = muscle.band
    said = f"{style.word('from')} {low:g}" if high is None else span(low, high)
    outside = "below" if muscle.sets < low else "above" if high is not None and muscle.sets > high else ""
    return f"{said}, {style.word(outside)}" if outside else said


def muscle_said(style: ChartStyle, muscle: Muscle) -> str:
    """One muscle's values for a reader who does not see the chart."""
    band = _band_said(style, muscle)
    sets = f"{muscle.name}: {number(muscle.sets)} {style.word('sets')}"
    return f"{sets}, {style.word('band')} {band}" if band else sets
