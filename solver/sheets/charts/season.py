"""Weekly sets of each muscle over a season, as SVG in one ink: a step a week, filled by emphasis."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from datetime import date, timedelta
from typing import TYPE_CHECKING, Any

from setwright.solver.engines.season.problem import HELD, SPECIALISED
from setwright.solver.sheets.charts.drawing import SMALL, ChartStyle, box, clipped, label, number, picture, rule

if TYPE_CHECKING:
    from setwright.catalogue.entries import Catalogue
    from setwright.solver.uses.season.season import Season

LEFT, RIGHT, HEAD = 96.0, 26.0, 34.0
ROW, BAR = 31.0, 25.0
"""Heights of a muscle's row and of the most sets in it."""
FILLS = {SPECIALISED: "solid", HELD: "none"}
USUAL_FILL = "hatch"
KEY = ((SPECIALISED, "specialised"), ("normal", "normal band"), (HELD, "held"))
WIDTH = 760.0
FIGURE_WIDTH = 18.0
"""A block narrower than this goes without its figures."""


@dataclass(frozen=True)
class DrawnBlock:
    """A block over the weeks from `first` on: for each muscle its emphasis and the sets of each week."""

    first: int
    rows: tuple[tuple[str, tuple[float, ...]], ...]


def season_chart(
    names: Sequence[str],
    blocks: Sequence[DrawnBlock],
    start: date,
    weeks: int,
    style: ChartStyle | None = None,
) -> str:
    """A row for each muscle with a step for each week, each block's full sets in figures; months along the foot."""
    style = style or ChartStyle(key="season", width=WIDTH)
    across = (style.width - LEFT - RIGHT) / weeks
    most = max([1.0, *(sets for block in blocks for _, row in block.rows for sets in row)])
    foot = HEAD + ROW * len(names)
    marks = [label(1, 12, style.word("Sets a week"), size=SMALL)]
    for place, name in enumerate(names):
        base = HEAD + ROW * (place + 1) - 2
        marks.append(label(1, base - 7, clipped(name, LEFT - 6)))
        marks.append(rule(style, LEFT, base, LEFT + across * weeks, base, "axis"))
    for count, block in enumerate(blocks, 1):
        marks += _block(style, block, count, across, most, foot)
    marks += _months(style, start, weeks, across, foot)
    marks += _key(style, foot + 40)
    said = "; ".join(_said(name, place, blocks) for place, name in enumerate(names))
    return picture(style, foot + 48, style.word("Weekly sets of each muscle over the season"), said, marks)


def drawn_season(season: Season) -> str:
    """The season's chart."""
    muscles = [muscle.name for muscle in season.problem.muscles]
    blocks = [
        DrawnBlock(
            block.first_week,
            tuple((block.emphases[m], tuple(week[m] for week in block.by_week)) for m in muscles),
        )
        for block in season.blocks
    ]
    names = [season.catalogue.muscles[m].name for m in muscles]
    return season_chart(
        names, blocks, season.start, len(season.weeks), ChartStyle("#000000", key="season", width=WIDTH)
    )


def chart_of_document(document: Mapping[str, Any], catalogue: Catalogue) -> str:
    """The same chart of a season's document, in the ink of the page that it stands on."""
    start = date.fromisoformat(document["first"])
    blocks = [
        DrawnBlock(
            (date.fromisoformat(block["first"]) - start).days // 7,
            tuple((m["emphasis"], tuple(m["by_week"])) for m in block["muscles"]),
        )
        for block in document["blocks"]
    ]
    muscles = document["blocks"][0]["muscles"] if document["blocks"] else ()
    return season_chart([catalogue.muscles[m["muscle"]].name for m in muscles], blocks, start, document["weeks"])


def _block(style: ChartStyle, block: DrawnBlock, count: int, across: float, most: float, foot: float) -> list[str]:
    """A block: its edges and number, and in each row its steps with the figure of a full week."""
    weeks = len(block.rows[0][1])
    left, wide = LEFT + across * block.first, across * weeks
    marks = [rule(style, x, HEAD - 6, x, foot, "edge", dashed=True) for x in (left, left + wide)]
    marks.append(label(left + wide / 2, HEAD - 9, str(count), "middle", SMALL, bold=True))
    for place, (emphasis, row) in enumerate(block.rows):
        base = HEAD + ROW * (place + 1) - 2
        fill = FILLS.get(emphasis, USUAL_FILL)
        for first, last, sets in _runs(row):
            tall = BAR * sets / most
            if tall:
                marks.append(
                    box(style, left + across * first, base - tall, across * (last - first), tall, fill, "step")
                )
        full = max(row)
        if wide >= FIGURE_WIDTH:
            marks += _figure(style, left + wide / 2, base - BAR * full / most, number(full), fill == "solid")
    return marks


def _figure(style: ChartStyle, x: float, top: float, said: str, bold: bool) -> list[str]:
    """A block's full sets, on white so that steps and hatching leave it legible."""
    half = 3.1 * len(said) + 1.5
    ground = (
        f'<rect class="ground" x="{number(x - half)}" y="{number(top - 4.5)}" width="{number(2 * half)}" height="9"'
    )
    return [f'{ground} fill="#ffffff"/>', label(x, top + 3.2, said, "middle", 9.5, bold)]


def _runs(row: Sequence[float]) -> list[tuple[int, int, float]]:
    """Weeks in a row with the same sets: (first, the one after the last, sets)."""
    found: list[tuple[int, int, float]] = []
    for week, sets in enumerate(row):
        if found and found[-1][2] == sets:
            found[-1] = (found[-1][0], week + 1, sets)
        else:
            found.append((week, week + 1, sets))
    return found


def _months(style: ChartStyle, start: date, weeks: int, across: float, foot: float) -> list[str]:
    """The first day, then a tick at the first of each month with its number, in January with its year (ISO 8601)."""
    marks, end = [label(LEFT, foot + 14, f"{start}", "middle", SMALL)], start + timedelta(weeks=weeks)
    free = LEFT + 40
    on = _next_month(start)
    while on <= end:
        x = LEFT + across * (on - start).days / 7
        marks.append(rule(style, x, foot - 2, x, foot + 4, "axis"))
        shown = f"{on:%Y-%m}" if on.month == 1 else f"{on:%m}"
        if x >= free:
            marks.append(label(x, foot + 14, shown, "middle", SMALL))
            free = x + 20
        on = _next_month(on)
    return marks


def _next_month(on: date) -> date:
    return date(on.year + on.month // 12, on.month % 12 + 1, 1)


def _key(style: ChartStyle, base: float) -> list[str]:
    """What the fillings mean."""
    marks, x = [], 1.0
    for emphasis, words in KEY:
        marks.append(box(style, x, base - 9, 18, 10, FILLS.get(emphasis, USUAL_FILL), "key"))
        marks.append(label(x + 24, base, style.word(words), size=SMALL))
        x += 108
    words = style.word("Figures: sets of a full week. A low last step is the block's lighter week.")
    return [*marks, label(x, base, words, size=SMALL)]


def _said(name: str, place: int, blocks: Sequence[DrawnBlock]) -> str:
    """One muscle's full weeks for a reader who does not see the chart."""
    parts = [f"block {count} {number(max(block.rows[place][1]))}" for count, block in enumerate(blocks, 1)]
    return f"{name}: {', '.join(parts)}"
