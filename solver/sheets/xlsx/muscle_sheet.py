"""The workbook's last sheet: weekly sets, band and index of every muscle, and the sets as a chart."""

from __future__ import annotations

from collections.abc import Mapping
from typing import TYPE_CHECKING, Any, Final

from setwright.solver.sheets.handout.values import Handout, MuscleRow
from setwright.solver.sheets.xlsx.week_sheet import LINE, lines_of, page, paragraph, set_height, text_of

if TYPE_CHECKING:
    from xlsxwriter import Workbook
    from xlsxwriter.worksheet import Worksheet

HEADINGS: Final = ("muscle", "emphasis", "sets", "days", "band_from", "band_to", "index", "interval")
WIDTHS: Final = (24, 12, 8, 8, 10, 10, 8, 14)
SETS, LOW, HIGH = 2, 4, 5
CHART_ROWS: Final = 20


def write_muscle_sheet(book: Workbook, sheet: Worksheet, handout: Handout, formats: Mapping[str, Any]) -> None:
    """The muscles on one portrait page."""
    words, last, letters = handout.coach.words, len(HEADINGS) - 1, sum(WIDTHS)
    for column, width in enumerate(WIDTHS):
        sheet.set_column(column, column, width)
    title = ", ".join(part for part in (handout.client, handout.week, words["weekly_sets"]) if part)
    head = paragraph(sheet, 0, last, title, formats["title"], letters * 0.6)
    set_height(sheet, 0, 22 * lines_of(title, letters * 0.6))
    for column, name in enumerate(HEADINGS):
        sheet.write_string(head, column, text_of(words[name]), formats["head"])
    sheet.freeze_panes(head + 1, 1)
    row = head + 1
    for m in handout.muscles:
        row = _muscle_row(sheet, row, m, handout, formats)
    below = paragraph(sheet, row, last, words["index_meaning"], formats["small"], letters)
    if handout.muscles:
        sheet.insert_chart(below + 1, 0, _chart(book, sheet.get_name(), head + 1, row - 1, handout))
    page(sheet, handout, below + 1 + CHART_ROWS, last)


def _muscle_row(sheet: Worksheet, row: int, m: MuscleRow, handout: Handout, formats: Mapping[str, Any]) -> int:
    """One muscle; an end that its band does not have stays empty. The next row."""
    words, number = handout.coach.words, formats["number"]
    sheet.write_string(row, 0, text_of(m.name), formats["cell"])
    sheet.write_string(row, 1, text_of(words.get(m.emphasis, m.emphasis)), formats["cell"])
    low, high = m.band or (None, None)
    for column, value in ((SETS, m.sets), (3, m.days), (LOW, low), (HIGH, high), (6, m.index)):
        if value is None:
            sheet.write_blank(row, column, None, number)
        else:
            sheet.write_number(row, column, value, number)
    sheet.write_string(row, 7, "{} to {}".format(*m.interval), number)
    set_height(sheet, row, LINE * lines_of(m.name, WIDTHS[0]) + 1)
    return row + 1


def _chart(book: Workbook, name: str, first: int, last: int, handout: Handout) -> Any:
    """Weekly sets as bars in one ink, a triangle and a dash at the ends of the band."""
    words = handout.coach.words
    bars = book.add_chart({"type": "column"})
    marks = book.add_chart({"type": "line"})

    def series(column: int, heading: str) -> dict[str, Any]:
        return {
            "name": text_of(heading),
            "categories": [name, first, 0, last, 0],
            "values": [name, first, column, last, column],
        }

    ink = {"color": "#A6A6A6"}
    sets = series(SETS, words["weekly_sets"])
    bars.add_series(
        {**sets, "fill": ink, "gap": 60, "data_labels": {"value": True, "position": "inside_base", "font": {"size": 8}}}
    )
    for column, heading, mark in ((LOW, "band_from", "triangle"), (HIGH, "band_to", "long_dash")):
        marker = {"type": mark, "size": 7, "border": {"color": "#000000"}, "fill": {"color": "#000000"}}
        marks.add_series({**series(column, words[heading]), "line": {"none": True}, "marker": marker})
    bars.combine(marks)
    bars.set_title({"name": text_of(words["weekly_sets"]), "name_font": {"size": 12}})
    bars.set_y_axis({"name": text_of(words["sets"]), "min": 0, "major_gridlines": {"visible": False}})
    bars.set_x_axis({"num_font": {"rotation": -45, "size": 9}})
    bars.set_legend({"position": "bottom"})
    bars.set_size({"width": 660, "height": 20 * CHART_ROWS - 20})
    return bars
