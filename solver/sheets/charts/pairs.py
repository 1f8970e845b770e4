"""Weeks side by side, as SVG in one ink: for each row one bar a week, told apart by hatching."""

from __future__ import annotations

from collections.abc import Sequence

from setwright.solver.sheets.charts.drawing import (
    SMALL,
    ChartStyle,
    box,
    clipped,
    label,
    number,
    picture,
    rule,
    ticks,
)

FILLS = ("solid", "none", "hatch", "dots")
"""The filling of the first, second, third and fourth week."""
BAR, GAP, LEFT = 10.0, 9.0, 112.0


def side_by_side(
    rows: Sequence[tuple[str, Sequence[float]]],
    names: Sequence[str] = ("first", "second"),
    style: ChartStyle | None = None,
    unit: str = "sets a week",
) -> str:
    """Rows of (label, one value for each name) as bars under each other, each with its figure; at most four names."""
    style = style or ChartStyle(key="pairs")
    if len(names) > len(FILLS) or any(len(values) != len(names) for _, values in rows):
        raise ValueError(f"side_by_side takes at most {len(FILLS)} names and one value for each name in every row")
    at = ticks(max([1.0, *(value for _, values in rows for value in values)]))
    scale = (style.width - LEFT - 34) / at[-1]
    deep = BAR * len(names) + GAP
    top = 6 + 16.0 * len(names)
    foot = top + deep * len(rows)
    marks = [mark for place, name in enumerate(names) for mark in _name_row(style, place, name)]
    marks += [rule(style, LEFT + t * scale, top, LEFT + t * scale, foot, "grid") for t in at]
    for place, (said, values) in enumerate(rows):
        marks += _bars_row(style, top + deep * place + GAP / 2, said, values, scale)
    marks.append(rule(style, LEFT, foot, LEFT + at[-1] * scale, foot, "axis"))
    marks += [label(LEFT + t * scale, foot + 12, f"{t:g}", "middle", SMALL) for t in at]
    marks.append(label(LEFT + at[-1] * scale, foot + 25, style.word(unit), "end", SMALL))
    words = "; ".join(
        f"{said}: " + ", ".join(f"{name} {number(value)}" for name, value in zip(names, values, strict=True))
        for said, values in rows
    )
    return picture(style, foot + 32, style.word("Side by side") + ": " + ", ".join(names), words, marks)


def _name_row(style: ChartStyle, place: int, name: str) -> list[str]:
    """One week's filling and name."""
    base = 12 + 16.0 * place
    return [box(style, 1, base - 9, 18, 10, FILLS[place], "key"), label(26, base, clipped(name, style.width - 30))]


def _bars_row(style: ChartStyle, top: float, said: str, values: Sequence[float], scale: float) -> list[str]:
    """One row: its label, then a bar and a figure for each week."""
    marks = [label(1, top + BAR * len(values) / 2 + 4, clipped(said, LEFT - 8))]
    for place, value in enumerate(values):
        y = top + BAR * place
        marks.append(box(style, LEFT, y + 1, value * scale, BAR - 2, FILLS[place], "bar"))
        marks.append(label(LEFT + value * scale + 4, y + BAR - 1, number(value), size=SMALL))
    return marks
