"""One session in the workbook: the card's lines, with boxes for the load and repetitions of each set."""

from __future__ import annotations

from collections.abc import Mapping
from datetime import date
from typing import TYPE_CHECKING, Any, Final

from setwright.solver.sheets.handout.values import CardLine, Handout, Session
from setwright.solver.sheets.xlsx import log_keys
from setwright.solver.sheets.xlsx.week_sheet import LINE, SMALL, lines_of, page, paragraph, set_height, text_of

if TYPE_CHECKING:
    from xlsxwriter.worksheet import Worksheet

Formats = Mapping[str, Any]
PLANNED: Final = ("order", "exercise", "sets_reps", "rir", "rest", "load")
WIDTHS: Final = (6, 36, 17, 5, 6, 9)
BOX: Final = 7
NOTES: Final = 15
TALL: Final = 38
"""Points of the lowest row: a box that a pen can write in."""


def write_session_sheet(sheet: Worksheet, session: Session, handout: Handout, formats: Formats) -> None:
    """One session on one landscape page; the first row holds keys and is hidden, the header stays in view."""
    sets = max(line.sets for line in session.lines)
    notes = len(PLANNED) + 2 * sets
    letters = sum(WIDTHS) + 2 * sets * BOX + NOTES
    _columns(sheet, sets, formats)
    row = paragraph(sheet, 1, notes, _heading(session, handout), formats["title"], letters * 0.6)
    set_height(sheet, row - 1, 22 * lines_of(_heading(session, handout), letters * 0.6))
    sheet.write_string(row - 1, notes + 1, f"{log_keys.SESSION} {session.number} {session.weekday or ''}".strip())
    row = paragraph(sheet, row, notes, _about(session, handout), formats["text"], letters)
    row = _header(sheet, row, sets, handout, formats)
    sheet.freeze_panes(row, 2)
    for line in session.lines:
        row = _log_row(sheet, row, line, sets, formats)
    row = _foot(sheet, row + 1, notes, handout, formats)
    for line in session.lines:
        row = paragraph(sheet, row, notes, _details(line, handout), formats["text"], letters)
    row = paragraph(sheet, row, notes, f"{handout.coach.words['rir_meaning']}.", formats["text"], letters)
    caution = f"{handout.coach.words['caution']}: {handout.caution}"
    row = paragraph(sheet, row, notes, caution, formats["text"], letters)
    sheet.set_landscape()
    page(sheet, handout, row - 1, notes, first_row=1)


def _columns(sheet: Worksheet, sets: int, formats: Formats) -> None:
    """Widths, and the hidden row of keys."""
    for column, (name, width) in enumerate(zip(PLANNED, WIDTHS, strict=True)):
        sheet.set_column(column, column, width)
        sheet.write_string(0, column, name)
    for number in range(1, sets + 1):
        at = _load_column(number)
        sheet.set_column(at, at + 1, BOX)
        sheet.write_string(0, at, log_keys.load_key(number))
        sheet.write_string(0, at + 1, log_keys.reps_key(number))
    notes = _load_column(sets + 1)
    sheet.set_column(notes, notes, NOTES)
    sheet.set_column(notes + 1, notes + 1, 24, formats["key"])
    sheet.write_string(0, notes, log_keys.NOTES)
    sheet.write_string(0, notes + 1, log_keys.ID)
    sheet.set_row(0, None, None, {"hidden": True})


def _load_column(number: int) -> int:
    """The column of a set's load; its repetitions stand beside it."""
    return len(PLANNED) + 2 * (number - 1)


def _heading(session: Session, handout: Handout) -> str:
    """R33, Week 1, Monday: 40 min."""
    said = ", ".join(part for part in (handout.client, handout.week, session.title) if part)
    return f"{said}: {session.minutes} {handout.coach.words['min']}"


def _about(session: Session, handout: Handout) -> str:
    """Kit, goal and warm-up on one line."""
    words = handout.coach.words
    said = [(words["kit"], session.place), (words["goal"], handout.goal), (words["warm_up"], session.warm_up)]
    return "; ".join(f"{name}: {what}" for name, what in said if what)


def _header(sheet: Worksheet, row: int, sets: int, handout: Handout, formats: Formats) -> int:
    """Two rows of headings: a set's number over its load and repetitions; the first row below."""
    words, form = handout.coach.words, formats["head"]
    unit = handout.document["brief"]["client"].get("unit", "kg")
    for column, name in enumerate(PLANNED):
        _over(sheet, row, column, words[name], form)
    for number in range(1, sets + 1):
        at = _load_column(number)
        sheet.merge_range(row, at, row, at + 1, "", form)
        sheet.write_string(row, at, f"{text_of(words['set'])} {number}", form)
        sheet.write_string(row + 1, at, unit, form)
        sheet.write_string(row + 1, at + 1, text_of(words["reps"]), form)
    _over(sheet, row, _load_column(sets + 1), words["notes"], form)
    return row + 2


def _over(sheet: Worksheet, row: int, column: int, words: str, form: Any) -> None:
    """A heading as high as both rows."""
    sheet.merge_range(row, column, row + 1, column, "", form)
    sheet.write_string(row, column, text_of(words), form)


def _log_row(sheet: Worksheet, row: int, line: CardLine, sets: int, formats: Formats) -> int:
    """One line with its boxes; those beyond its sets are hatched. The next row."""
    _two_lines(sheet, row, 1, line.name, line.setting, formats, "name", "cell")
    _two_lines(sheet, row, 2, f"{line.sets} x {line.reps}", line.technique, formats, "plain", "middle")
    for column, said in ((0, line.label), (4, line.rest), (5, line.load or "")):
        sheet.write_string(row, column, text_of(said), formats["middle"])
    sheet.write_number(row, 3, line.rir, formats["middle"])
    for number in range(1, sets + 1):
        _box(sheet, row, number, number <= line.sets, formats)
    notes = _load_column(sets + 1)
    sheet.write_blank(row, notes, None, formats["cell"])
    sheet.write_string(row, notes + 1, line.exercise, formats["key"])
    named = lines_of(line.name, WIDTHS[1] * 0.85) + (lines_of(line.setting, WIDTHS[1]) if line.setting else 0)
    asked = 1 + (lines_of(line.technique, WIDTHS[2] * SMALL) if line.technique else 0)
    high = max(named, asked, lines_of(line.load or "", WIDTHS[5]))
    set_height(sheet, row, max(TALL, LINE * high))
    return row + 1


def _two_lines(
    sheet: Worksheet, row: int, column: int, over: str, under: str, formats: Formats, font: str, form: str
) -> None:
    """A cell with one text over another in small."""
    first, second = text_of(over), text_of(under)
    if first and second:
        parts = (formats[font], first, formats["under"], f"\n{second}")
        sheet.write_rich_string(row, column, *parts, formats[form])
    else:
        sheet.write_string(row, column, first or second, formats[form])


def _box(sheet: Worksheet, row: int, number: int, asked: bool, formats: Formats) -> None:
    """The two cells of one set, which take numbers only."""
    at = _load_column(number)
    sheet.write_blank(row, at, None, formats["load" if asked else "closed"])
    sheet.write_blank(row, at + 1, None, formats["reps" if asked else "closed"])
    sheet.data_validation(row, at, row, at, _takes("decimal", 0, log_keys.MOST_LOAD))
    sheet.data_validation(row, at + 1, row, at + 1, _takes("integer", 0, log_keys.MOST_REPS))


def _takes(kind: str, low: Any, high: Any) -> dict[str, Any]:
    """What an input cell takes; anything else is refused with the limits."""
    said = {"decimal": "a number", "integer": "a whole number", "date": "a date"}[kind]
    return {
        "validate": kind,
        "criteria": "between",
        "minimum": low,
        "maximum": high,
        "error_title": "Not taken",
        "error_message": f"Write {said} from {low} to {high}.",
    }


def _foot(sheet: Worksheet, row: int, notes: int, handout: Handout, formats: Formats) -> int:
    """Date, minutes taken, how hard and notes of the session; the row after next."""
    words, at, form = handout.coach.words, _load_column(1), formats["beside"]
    inputs = (
        (log_keys.DATE, words["date"], formats["date"], _takes("date", date(2000, 1, 1), date(2099, 12, 31))),
        (log_keys.MINUTES, words["minutes"], formats["reps"], _takes("integer", 0, log_keys.MOST_MINUTES)),
        (log_keys.HARD, words["how_hard"], formats["load"], _takes("decimal", 0, log_keys.HARDEST)),
        (log_keys.REMARKS, words["notes"], formats["cell"], None),
    )
    for key, name, cell, valid in inputs:
        sheet.merge_range(row, 2, row, at - 1, "", form)
        sheet.write_string(row, 2, text_of(name), form)
        wide = valid is None
        sheet.merge_range(row, at, row, notes if wide else at + 1, "", cell)
        set_height(sheet, row, TALL if wide else 20)
        if valid:
            sheet.data_validation(row, at, row, at, valid)
        sheet.write_string(row, notes + 1, key)
        row += 1
    return row + 1


def _details(line: CardLine, handout: Handout) -> str:
    """Cue, plates, ramp-up sets, swaps and link of one line in a paragraph."""
    words = handout.coach.words
    said = [
        (words["cue"], line.cue),
        (words["plates"], line.plates),
        (words["ramp_up"], line.ramp_up),
        (words["swap"], f" {words['or']} ".join(line.swaps)),
        (words["link"], line.link or ""),
    ]
    return f"{line.label} {line.name}. " + " ".join(f"{name}: {what}." for name, what in said if what)
