"""The curve of what minutes buy, as SVG in one ink, with its bend marked."""

from __future__ import annotations

from collections.abc import Sequence

from setwright.solver.sheets.charts.drawing import SMALL, ChartStyle, label, number, picture, rule, ticks

TOP, DEEP, LEFT = 22.0, 190.0, 34.0
ROOM = 26.0
"""What a point's figure takes to its right."""


def curve_chart(
    points: Sequence[tuple[float, float]],
    bend: float | None = None,
    style: ChartStyle | None = None,
    intervals: Sequence[tuple[float, float]] = (),
    across: str = "minutes a week",
    up: str = "week index",
) -> str:
    """The reckoned points joined by straight lines, each with its figure; whiskers where intervals are given.

    `bend` is the place across at which a further minute begins to buy less; it is marked with a dashed line.
    """
    style = style or ChartStyle(key="curve")
    spots = sorted(points)
    spread = [interval for _, interval in sorted(zip(points, intervals, strict=False))]
    xs = ticks(max([1.0, *(x for x, _ in spots)]), 5)
    ys = ticks(max([1.0, *(y for _, y in spots), *(high for _, high in spread)]), 5)
    across_scale, up_scale = (style.width - LEFT - 14) / xs[-1], DEEP / ys[-1]
    foot = TOP + DEEP

    def x_of(value: float) -> float:
        return LEFT + value * across_scale

    def y_of(value: float) -> float:
        return foot - value * up_scale

    marks = [label(1, 12, style.word(up), size=SMALL)]
    for t in ys:
        marks.append(rule(style, LEFT, y_of(t), x_of(xs[-1]), y_of(t), "axis" if t == 0 else "grid"))
        marks.append(label(LEFT - 5, y_of(t) + 4, f"{t:g}", "end", SMALL))
    marks += [label(x_of(t), foot + 14, f"{t:g}", "middle", SMALL) for t in xs]
    marks.append(label(x_of(xs[-1]), foot + 28, style.word(across), "end", SMALL))
    for (x, _), (low, high) in zip(spots, spread, strict=False):
        marks.append(rule(style, x_of(x), y_of(low), x_of(x), y_of(high), "whisker"))
    if bend is not None:
        marks.append(rule(style, x_of(bend), TOP, x_of(bend), foot, "bend", dashed=True))
        side, shift = ("end", -5) if x_of(bend) > style.width / 2 else ("start", 5)
        marks.append(label(x_of(bend) + shift, foot - 8, f"{style.word('bend at')} {bend:g}", side, SMALL, bold=True))
    joined = " ".join(f"{number(x_of(x))},{number(y_of(y))}" for x, y in spots)
    marks.append(f'<polyline class="curve" points="{joined}" fill="none" stroke="{style.ink}" stroke-width="2"/>')
    for x, y in spots:
        marks.append(f'<circle class="point" cx="{number(x_of(x))}" cy="{number(y_of(y))}" r="3"/>')
        side, shift = ("end", -6) if x_of(x) + ROOM > style.width else ("start", 6)
        marks.append(label(x_of(x) + shift, y_of(y) + 13, f"{y:.0f}", side, SMALL))
    said = "; ".join(f"{x:g} {style.word(across)}: {style.word(up)} {y:g}" for x, y in spots)
    said += f"; {style.word('bend at')} {bend:g}" if bend is not None else ""
    return picture(style, foot + 34, style.word("What a week's minutes buy"), said, marks)
