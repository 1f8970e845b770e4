"""A block as SVG in one ink: for each lift and week a bar for its sets, the load under it."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from setwright.solver.sheets.charts.drawing import SMALL, ChartStyle, box, clipped, label, number, picture, rule

LEFT, COLUMN, BAR = 236.0, 52.0, 20.0
TOP, DEEP, SETS = 34.0, 46.0, 26.0
"""Units of the view box: the head, a row, and the highest bar in it."""


@dataclass(frozen=True)
class BlockCell:
    """One lift in one week; `sets` 0 where it is not done, `load` in words, empty where none is known."""

    sets: int
    load: str = ""


@dataclass(frozen=True)
class BlockColumn:
    """One week: its number, its kind in words, whether its bars are hatched as lighter than a build week."""

    name: str
    kind: str
    hatched: bool


def block_chart(
    columns: Sequence[BlockColumn], rows: Sequence[tuple[str, Sequence[BlockCell]]], style: ChartStyle | None = None
) -> str:
    """Rows of (lift, one cell for each week) as bars of sets with their figures; the loads stand under the bars."""
    style = style or ChartStyle(key="block", width=LEFT + COLUMN * max(1, len(columns)) + 8)
    marks = [label(1, 13, style.word("Sets by week, load below"), size=SMALL)]
    for place, column in enumerate(columns):
        middle = LEFT + COLUMN * (place + 0.5)
        marks.append(label(middle, 13, column.name, "middle", bold=True))
        marks.append(label(middle, 26, clipped(column.kind, COLUMN - 2, SMALL), "middle", SMALL))
    for place, (said, cells) in enumerate(rows):
        marks += _row(style, TOP + DEEP * place, said, cells, columns)
    words = "; ".join(f"{said}: {_row_words(cells, columns)}" for said, cells in rows)
    return picture(style, TOP + DEEP * len(rows) + 6, style.word("Sets and load of each lift by week"), words, marks)


def _row(
    style: ChartStyle, top: float, said: str, cells: Sequence[BlockCell], columns: Sequence[BlockColumn]
) -> list[str]:
    """One lift: its name, a bar a week on a common scale within the row, the figures."""
    foot = top + DEEP - 14
    most = max([1, *(cell.sets for cell in cells)])
    marks = [label(1, foot - 6, clipped(said, LEFT - 8))]
    marks.append(rule(style, LEFT, foot, LEFT + COLUMN * len(columns), foot, "axis"))
    for place, (cell, column) in enumerate(zip(cells, columns, strict=True)):
        if not cell.sets:
            continue
        middle, height = LEFT + COLUMN * (place + 0.5), (SETS - 10) * cell.sets / most
        fill = "hatch" if column.hatched else "solid"
        marks.append(box(style, middle - BAR / 2, foot - height, BAR, height, fill, "bar"))
        marks.append(label(middle, foot - height - 2, number(cell.sets), "middle", SMALL))
        marks.append(label(middle, foot + 11, clipped(cell.load, COLUMN - 2, SMALL), "middle", SMALL))
    return marks


def _row_words(cells: Sequence[BlockCell], columns: Sequence[BlockColumn]) -> str:
    return ", ".join(
        f"week {column.name} {cell.sets} sets{f' at {cell.load}' if cell.load else ''}"
        for cell, column in zip(cells, columns, strict=True)
        if cell.sets
    )
