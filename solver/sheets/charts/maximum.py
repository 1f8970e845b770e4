"""The estimated maximum of a lift over the days, as SVG in one ink, each estimate with its interval."""

from __future__ import annotations

import math
from collections.abc import Sequence

from setwright.solver.sheets.charts.drawing import SMALL, ChartStyle, clipped, label, number, picture, rule, ticks

TOP, DEEP, LEFT = 22.0, 160.0, 38.0
Point = tuple[float, float, float, float]
"""Days since the first session, the estimate, and the lower and upper end of its interval."""


def maximum_chart(points: Sequence[Point], name: str, unit: str, since: str, style: ChartStyle | None = None) -> str:
    """The estimates joined by straight lines, a whisker each; the upright axis begins just below the lowest interval.

    `since` names the day that days are counted from; raises ValueError without points.
    """
    style = style or ChartStyle(key="maximum")
    spots = sorted(points)
    lowest, highest = min(low for _, _, low, _ in spots), max(high for _, _, _, high in spots)
    step = ticks(max(highest - lowest, 1.0), 5)[1]
    base = step * math.floor(lowest / step)
    ys = [base + t for t in ticks(highest - base, 6, step)]
    xs = ticks(max(1.0, spots[-1][0]), 5)
    across, up = (style.width - LEFT - 14) / xs[-1], DEEP / (ys[-1] - base)
    foot = TOP + DEEP

    def x_of(value: float) -> float:
        return LEFT + value * across

    def y_of(value: float) -> float:
        return foot - (value - base) * up

    title = f"{style.word('Estimated maximum')}, {unit}: {name}"
    marks = [label(1, 12, clipped(title, style.width - 2, SMALL), size=SMALL)]
    for t in ys:
        marks.append(rule(style, LEFT, y_of(t), x_of(xs[-1]), y_of(t), "axis" if t == base else "grid"))
        marks.append(label(LEFT - 5, y_of(t) + 4, f"{t:g}", "end", SMALL))
    marks += [label(x_of(t), foot + 14, f"{t:g}", "middle", SMALL) for t in xs]
    marks.append(label(x_of(xs[-1]), foot + 28, f"{style.word('days since')} {since}", "end", SMALL))
    marks += [rule(style, x_of(x), y_of(low), x_of(x), y_of(high), "whisker") for x, _, low, high in spots]
    joined = " ".join(f"{number(x_of(x))},{number(y_of(y))}" for x, y, _, _ in spots)
    marks.append(f'<polyline class="curve" points="{joined}" fill="none" stroke="{style.ink}" stroke-width="2"/>')
    marks += [f'<circle class="point" cx="{number(x_of(x))}" cy="{number(y_of(y))}" r="3"/>' for x, y, _, _ in spots]
    said = "; ".join(f"{x:g}: {y:.1f} ({low:.1f}-{high:.1f})" for x, y, low, high in spots)
    return picture(style, foot + 34, title, f"{style.word('days since')} {since}: {said}", marks)
