"""The workbook's first sheet: whose week it is, its sessions, why it is so, the caution."""

from __future__ import annotations

import math
from collections.abc import Mapping
from typing import TYPE_CHECKING, Any, Final

from setwright.solver.sheets.common.sanitise import isolated
from setwright.solver.sheets.handout.values import Handout

if TYPE_CHECKING:
    from xlsxwriter.worksheet import Worksheet

PAPERS: Final = {"a4": 9, "letter": 1}
"""The file format's numbers of the two sizes (ECMA-376 part 1, pageSetup)."""
WIDTHS: Final = (16, 9, 7, 18, 44)
LINE: Final = 15
"""Points that one line of text takes."""
SMALL: Final = 1.2
"""How many more letters of the small font fit."""
NARROW: Final = frozenset("iljtfrI.,;:'!|-() ")
TALLEST: Final = 409
MOST_LETTERS: Final = 32_000
"""A cell holds a little more (32,767)."""


def text_of(words: str) -> str:
    """Words as a cell holds them: one line, not too long, no direction that runs on."""
    return isolated(words)[:MOST_LETTERS]


def lines_of(text: str, letters: float) -> int:
    """About how many lines a text takes where so many digits fit on one; a little too many, so that none is cut."""
    return max(1, math.ceil(_breadth(text) / max(letters, 1)))


def _breadth(text: str) -> float:
    """About how broad a text is, in digits of its font (measured by eye on common sans fonts, no source)."""
    return sum(0.55 if x in NARROW else 2 if x > "\u2e80" else 1.4 if x in "mwMW@%" else 0.95 for x in text)


def set_height(sheet: Worksheet, row: int, points: float) -> None:
    """A row's height, as high as a row may be at most."""
    sheet.set_row(row, min(points, TALLEST))


def paragraph(sheet: Worksheet, row: int, last: int, words: str, form: Any, letters: float) -> int:
    """One text over the columns 0 to `last`, its row as high as it needs; the next row."""
    text = text_of(words)
    sheet.merge_range(row, 0, row, last, "", form)
    sheet.write_string(row, 0, text, form)
    set_height(sheet, row, LINE * lines_of(text, letters))
    return row + 1


def page(sheet: Worksheet, handout: Handout, last_row: int, last_column: int, first_row: int = 0) -> None:
    """The print area on one page of the coach's paper."""
    sheet.set_paper(PAPERS[handout.coach.paper])
    sheet.set_margins(left=0.5, right=0.5, top=0.5, bottom=0.5)
    sheet.print_area(first_row, 0, last_row, last_column)
    sheet.fit_to_pages(1, 1)


def write_week_sheet(sheet: Worksheet, handout: Handout, formats: Mapping[str, Any]) -> None:
    """The week on one portrait page."""
    words, last, letters = handout.coach.words, len(WIDTHS) - 1, sum(WIDTHS)
    for column, width in enumerate(WIDTHS):
        sheet.set_column(column, column, width)
    row = 0
    for place, line in enumerate((handout.coach.name, *handout.coach.lines)):
        row = paragraph(sheet, row, last, line, formats["text" if place else "strong"], letters) if line else row
    row += row > 0
    row = paragraph(sheet, row, last, f"{handout.title}: {handout.week}", formats["title"], letters * 0.6)
    set_height(sheet, row - 1, 22 * lines_of(handout.title, letters * 0.6))
    row += 1
    for name, said in _facts(handout):
        row = _fact(sheet, row, name, said, formats)
    row = _sessions(sheet, row + 1, handout, formats)
    row = paragraph(sheet, row + 1, last, words["why_week"], formats["heading"], letters)
    for sentence in handout.why:
        row = paragraph(sheet, row, last, sentence, formats["text"], letters)
    if handout.left_out:
        left_out = f"{words['left_out']}: {'; '.join(handout.left_out)}."
        row = paragraph(sheet, row + 1, last, left_out, formats["text"], letters)
    caution, made_by = f"{words['caution']}: {handout.caution}", f"{words['made_by']} {handout.made_by}."
    row = paragraph(sheet, row + 1, last, f"{words['rir_meaning']}.", formats["small"], letters * SMALL)
    for said in handout.on_loads:
        row = paragraph(sheet, row, last, f"{words['load']}: {said}", formats["small"], letters * SMALL)
    row = paragraph(sheet, row, last, caution, formats["small"], letters * SMALL)
    row = paragraph(sheet, row, last, made_by, formats["small"], letters * SMALL)
    page(sheet, handout, row - 1, last)


def _facts(handout: Handout) -> list[tuple[str, str]]:
    """Named facts, those that say nothing left out."""
    words, low, high = handout.coach.words, *handout.interval
    index = f"{handout.index:.1f} ({words['interval'].lower()} {low} to {high})"
    rows = [("client", handout.client), ("goal", handout.goal), ("asked", handout.asked), ("week_index", index)]
    rows.append(("review", handout.review.isoformat() if handout.review else ""))
    return [(words[name], said) for name, said in rows if said]


def _fact(sheet: Worksheet, row: int, name: str, said: str, formats: Mapping[str, Any]) -> int:
    text = text_of(said)
    sheet.write_string(row, 0, text_of(name), formats["strong"])
    sheet.merge_range(row, 1, row, len(WIDTHS) - 1, "", formats["text"])
    sheet.write_string(row, 1, text, formats["text"])
    set_height(sheet, row, LINE * max(lines_of(text, sum(WIDTHS[1:])), lines_of(name, WIDTHS[0])))
    return row + 1


def _sessions(sheet: Worksheet, row: int, handout: Handout, formats: Mapping[str, Any]) -> int:
    """A row for each session: minutes, sets, kit and exercises; the next row."""
    words = handout.coach.words
    for column, name in enumerate(("session", "minutes", "sets", "kit", "exercise")):
        sheet.write_string(row, column, text_of(words[name]), formats["head"])
    for session in handout.sessions:
        row += 1
        exercises = "; ".join(line.name for line in session.lines) or words["nothing"]
        said = ((0, session.title), (3, session.place), (4, exercises))
        for column, text in said:
            sheet.write_string(row, column, text_of(text), formats["cell"])
        sheet.write_number(row, 1, session.minutes, formats["number"])
        sheet.write_number(row, 2, sum(line.sets for line in session.lines), formats["number"])
        set_height(sheet, row, LINE * max(lines_of(text, 0.85 * WIDTHS[column]) for column, text in said) + 3)
    return row + 1
