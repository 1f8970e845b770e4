"""The workbook: what it holds, how it is filled in and read back, and that nothing in it runs."""

from __future__ import annotations

import io
import re
import zipfile
from collections.abc import Callable
from dataclasses import replace
from datetime import date, datetime
from typing import Any
from xml.etree import ElementTree

import openpyxl
import pytest
from handed import PAIRS, THREE, document, handed, prints_under_hash_seeds
from hostile import NAMES, hostile
from hypothesis import given, settings
from hypothesis import strategies as st
from offices import office, resaved

from setwright.catalogue.faults import UsageFault
from setwright.solver.foreign.filled.filled_workbook import Done, DoneSet, read_workbook
from setwright.solver.sheets.common.sanitise import isolated
from setwright.solver.sheets.handout.coach import Coach
from setwright.solver.sheets.handout.handout import Handout
from setwright.solver.sheets.xlsx import log_keys
from setwright.solver.sheets.xlsx.workbook import xlsx_bytes


def opened(handout: Handout) -> openpyxl.Workbook:
    return openpyxl.load_workbook(io.BytesIO(xlsx_bytes(handout)), rich_text=False)


def parts(data: bytes) -> dict[str, str]:
    with zipfile.ZipFile(io.BytesIO(data)) as package:
        return {name: package.read(name).decode() for name in package.namelist()}


def places(sheet: Any) -> tuple[dict[str, int], dict[str, int]]:
    """Key -> column, and name of a row -> row."""
    keys = {cell.value: cell.column for cell in sheet[1] if cell.value}
    column = keys[log_keys.ID]
    rows = {sheet.cell(row, column).value: row for row in range(2, sheet.max_row + 1)}
    return keys, {name: row for name, row in rows.items() if name}


def filled(handout: Handout, change: Callable[[Any], None] | None = None) -> bytes:
    """The workbook with every asked set of every session done: 20 for the first set's load, one more for each."""
    book = opened(handout)
    for session, sheet in zip(handout.sessions, book.worksheets[1:-1], strict=True):
        keys, rows = places(sheet)
        at = keys[log_keys.load_key(1)]
        for line in session.lines:
            for number in range(1, line.sets + 1):
                sheet.cell(rows[line.exercise], keys[log_keys.load_key(number)], 19.5 + number)
                sheet.cell(rows[line.exercise], keys[log_keys.reps_key(number)], 8)
        sheet.cell(rows[log_keys.DATE], at, datetime(2026, 1, 4 + session.number))
        sheet.cell(rows[log_keys.MINUTES], at, session.minutes)
        sheet.cell(rows[log_keys.HARD], at, 7.5)
        sheet.cell(rows[log_keys.REMARKS], at, "went well")
        sheet.cell(rows[session.lines[0].exercise], keys[log_keys.NOTES], "felt easy")
    if change:
        change(book)
    data = io.BytesIO()
    book.save(data)
    return data.getvalue()


def check_all_done(done: Done, handout: Handout) -> None:
    assert done.faults == ()
    for session, found in zip(handout.sessions, done.sessions, strict=True):
        asked = [(x.exercise, n, 19.5 + n, 8) for x in session.lines for n in range(1, x.sets + 1)]
        assert [(s.exercise, s.number, s.load, s.reps) for s in found.sets] == asked
        assert (found.number, found.weekday) == (session.number, session.weekday)
        assert found.date == date(2026, 1, 4 + session.number)
        assert (found.minutes, found.how_hard) == (session.minutes, 7.5)
        assert found.notes == ((session.lines[0].exercise, "felt easy"), ("", "went well"))


@pytest.mark.parametrize("name", [THREE, PAIRS])
def test_a_filled_in_copy_is_read_back(name: str) -> None:
    check_all_done(read_workbook(filled(handed(name))), handed(name))


BOXES = st.tuples(st.none() | st.decimals(0, 1000, places=2).map(float), st.none() | st.integers(0, 100))


@settings(max_examples=12, deadline=None, derandomize=True)
@given(st.lists(BOXES, min_size=3, max_size=3))
def test_any_numbers_in_the_boxes_come_back_or_are_faulted(boxes: list[tuple[float | None, int | None]]) -> None:
    def write(book: Any) -> None:
        sheet = book.worksheets[1]
        keys, rows = places(sheet)
        for number, (load, reps) in enumerate(boxes, 1):
            sheet.cell(rows["pull-up"], keys[log_keys.load_key(number)]).value = load
            sheet.cell(rows["pull-up"], keys[log_keys.reps_key(number)]).value = reps

    done = read_workbook(filled(handed(), write))
    found = [(s.number, s.load, s.reps) for s in done.sessions[0].sets if s.exercise == "pull-up"]
    assert found == [(n, load, reps) for n, (load, reps) in enumerate(boxes, 1) if reps is not None]
    assert len(done.faults) == sum(load is not None and reps is None for load, reps in boxes)


def test_an_empty_copy_has_nothing_done() -> None:
    done = read_workbook(xlsx_bytes(handed()))
    assert done.faults == ()
    assert [s.number for s in done.sessions] == [1, 2, 3]
    assert not [s for session in done.sessions for s in (*session.sets, *session.notes)]


def test_a_done_set_knows_its_cell() -> None:
    done = read_workbook(filled(handed()))
    first = done.sessions[0].sets[0]
    assert first == DoneSet("hack-squat", 1, 20.5, 8, first.where)
    sheet, cell = first.where.split("!")
    assert openpyxl.load_workbook(io.BytesIO(filled(handed())))[sheet][cell].value == 8


def test_every_cell_that_is_amiss_is_named_and_the_rest_is_read() -> None:
    def spoil(book: Any) -> None:
        sheet = book.worksheets[1]
        keys, rows = places(sheet)
        row, load, reps = rows["hack-squat"], keys["load-1"], keys["reps-1"]
        sheet.cell(row, load, "heavy")
        sheet.cell(row, reps + 2, 8.5)
        sheet.cell(rows["pull-up"], load, "22,5")
        sheet.cell(rows["pull-up"], reps + 2).value = None
        sheet.cell(rows["hanging-knee-raise"], reps, -1)
        sheet.cell(rows["seated-dumbbell-shoulder-press"], reps, True)
        sheet.cell(rows[log_keys.DATE], load, "yesterday")
        sheet.cell(rows[log_keys.HARD], load, 11)

    done = read_workbook(filled(handed(), spoil), "w.xlsx")
    said = [str(fault).removeprefix("w.xlsx: Monday!") for fault in done.faults]
    assert [re.sub(r"^[A-Z]+\d+: ", "", s) for s in said] == [
        "got 'yesterday', expected a date such as 2026-01-05",
        "got '11', expected a number from 0 to 10",
        "got 'heavy', expected a number from 0 to 1000",
        "got '8.5', expected a whole number from 0 to 100",
        "a load without repetitions; write how many were done",
        "got 'True', expected a whole number from 0 to 100",
        "got '-1', expected a whole number from 0 to 100",
    ]
    assert ("pull-up", 1, 22.5, 8) in [(s.exercise, s.number, s.load, s.reps) for s in done.sessions[0].sets]
    assert len(done.sessions[1].sets) == sum(e["sets"] for e in document()["days"][1]["entries"])


def test_rows_and_columns_that_were_moved_are_found() -> None:
    def move(book: Any) -> None:
        sheet = book.worksheets[2]
        sheet.title = "Midweek"
        for merged in list(sheet.merged_cells.ranges):
            sheet.unmerge_cells(str(merged))
        sheet.insert_rows(4)
        sheet.insert_cols(1)
        book.move_sheet(sheet, -1)

    check_all_done(read_workbook(filled(handed(), move)), handed())


def test_a_session_on_two_sheets_is_a_fault() -> None:
    done = read_workbook(filled(handed(), lambda book: book.copy_worksheet(book.worksheets[1])))
    assert [str(f) for f in done.faults] == ["week.xlsx: session 1 stands on two sheets; keep one of them"]


def other_book() -> bytes:
    data = io.BytesIO()
    openpyxl.Workbook().save(data)
    return data.getvalue()


def bomb() -> bytes:
    data = io.BytesIO()
    with zipfile.ZipFile(data, "w", zipfile.ZIP_DEFLATED) as package:
        package.writestr("xl/workbook.xml", b" " * 60_000_000)
    return data.getvalue()


def broken() -> bytes:
    data = io.BytesIO()
    with zipfile.ZipFile(data, "w") as package:
        package.writestr("[Content_Types].xml", "<x>")
    return data.getvalue()


@pytest.mark.parametrize(
    ("make", "said"),
    [
        (lambda: b"", "is no xlsx workbook"),
        (lambda: b"PK\x03\x04 not really", "is no xlsx workbook"),
        (lambda: b"x" * 6_000_000, "larger than 5 MB"),
        (bomb, "unpacks to more than 50 MB"),
        (broken, "is no xlsx workbook that can be read"),
        (other_book, "holds no sheet of a session"),
    ],
)
def test_a_file_that_is_no_such_workbook_says_why(make: Callable[[], bytes], said: str) -> None:
    with pytest.raises(UsageFault, match=said):
        read_workbook(make())


def test_a_session_sheet_prints_on_one_page_and_keeps_its_header_in_view() -> None:
    for paper, number in (("a4", "9"), ("letter", "1")):
        book = opened(handed(coach=Coach(paper=paper)))  # type: ignore[arg-type]
        for sheet in book.worksheets:
            assert (sheet.page_setup.fitToWidth or 1, sheet.page_setup.fitToHeight or 1) == (1, 1)
            assert sheet.sheet_properties.pageSetUpPr.fitToPage
            assert str(sheet.page_setup.paperSize) == number
            assert sheet.print_area
        for sheet in book.worksheets[1:-1]:
            keys, rows = places(sheet)
            assert sheet.page_setup.orientation == "landscape"
            first = min(row for name, row in rows.items() if not name.startswith("@"))
            assert sheet.freeze_panes == f"C{first}"
            assert sheet.row_dimensions[1].hidden
            last = sheet.print_area.rsplit("$", 2)[1]
            assert openpyxl.utils.column_index_from_string(last) < keys[log_keys.ID]


def test_boxes_take_numbers_in_their_limits_only() -> None:
    h = handed()
    sheet = opened(h).worksheets[1]
    keys, rows = places(sheet)
    for line in h.sessions[0].lines:
        for key, kind, most in (("load-1", "decimal", "1000"), ("reps-1", "whole", "100")):
            cell = sheet.cell(rows[line.exercise], keys[key]).coordinate
            found = [v for v in sheet.data_validations.dataValidation if cell in v.sqref]
            assert [(v.type, v.operator or "between", v.formula1, v.formula2) for v in found] == [
                (kind, "between", "0", most)
            ]


def test_the_muscles_stand_in_a_native_chart() -> None:
    h = handed()
    data = xlsx_bytes(h)
    sheet = opened(h).worksheets[-1]
    rows = {row[0].value: [cell.value for cell in row] for row in sheet.iter_rows(min_row=3, max_col=8)}
    for m in h.muscles:
        low, high = m.band or (None, None)
        assert rows[m.name][2:7] == [m.sets, m.days, low, high, m.index]
    chart = ElementTree.fromstring(parts(data)["xl/charts/chart1.xml"])
    spots = [e.text for e in chart.iter("{http://schemas.openxmlformats.org/drawingml/2006/chart}f")]
    last = 2 + len(h.muscles)
    assert [s for s in spots if s] == [
        text for column in "CEF" for text in (f"Muscles!$A$3:$A${last}", f"Muscles!${column}$3:${column}${last}")
    ]


def test_there_are_no_macros_links_or_formulas_in_it() -> None:
    for name, text in parts(xlsx_bytes(handed())).items():
        assert "vba" not in name.lower()
        assert "externalLink" not in name
        assert 'TargetMode="External"' not in text
        assert "<hyperlink" not in text
        assert not (name.startswith("xl/worksheets/sheet") and "<f>" in text)


@pytest.mark.parametrize("name", NAMES)
def test_a_name_is_only_a_name(name: str) -> None:
    data = xlsx_bytes(hostile(NAMES[name]))
    for part, text in parts(data).items():
        ElementTree.fromstring(text)
        assert 'TargetMode="External"' not in text
        assert "<hyperlink" not in text
        assert not (part.startswith("xl/worksheets/sheet") and "<f>" in text)
    book = openpyxl.load_workbook(io.BytesIO(data))
    names = [sheet.title for sheet in book.worksheets]
    assert len({n.lower() for n in names}) == len(names) == 5
    assert all(0 < len(n) <= 31 and not re.search(r"[\[\]:*?/\\]", n) for n in names)
    cells = [c for sheet in book.worksheets for row in sheet.iter_rows() for c in row if isinstance(c.value, str)]
    assert not [c for c in cells if c.data_type == "f"]
    wanted = isolated(NAMES[name])
    assert sum(wanted in c.value for c in cells) > 10
    assert len(read_workbook(data).sessions) == 3


AGAIN = """
import hashlib
from handed import handed
from setwright.solver.sheets.xlsx.workbook import xlsx_bytes
print(hashlib.sha256(xlsx_bytes(handed())).hexdigest())
"""


def test_the_same_week_gives_the_same_bytes() -> None:
    assert len(prints_under_hash_seeds(AGAIN)) == 1


def test_words_of_the_coach_head_the_columns() -> None:
    h = handed()
    coach = h.coach.model_copy(update={"words": {**h.coach.words, "exercise": "\u00dcbung"}, "name": "Studio Birch"})
    book = opened(replace(h, coach=coach))
    assert any(cell.value == "\u00dcbung" for row in book.worksheets[1].iter_rows() for cell in row)
    assert book.worksheets[0]["A1"].value == "Studio Birch"


@pytest.mark.slow
@pytest.mark.skipif(office() is None, reason="soffice (Debian: libreoffice-calc) is not installed")
def test_a_copy_filled_in_and_saved_by_libreoffice_is_read_back() -> None:
    check_all_done(read_workbook(resaved(filled(handed()))), handed())


@pytest.mark.slow
@pytest.mark.skipif(office() is None, reason="soffice (Debian: libreoffice-calc) is not installed")
def test_libreoffice_runs_no_name() -> None:
    book = openpyxl.load_workbook(io.BytesIO(resaved(xlsx_bytes(hostile("=1+1")))))
    cells = [c for sheet in book.worksheets for row in sheet.iter_rows() for c in row]
    assert not [c for c in cells if c.data_type == "f"]
    assert sum(isinstance(c.value, str) and "=1+1" in c.value for c in cells) > 10
    assert not [c for c in cells if c.value == 2 and isinstance(c.value, float)]
