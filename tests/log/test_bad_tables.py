"""Tables that are refused: each fault with its row, its column and a remedy, all at once, and nothing read."""

from __future__ import annotations

import io
import sys
import zipfile
from collections.abc import Callable
from datetime import date, datetime
from pathlib import Path

import pytest
from read_logs import CATALOGUE, faults, only, read, sets, workbook

from setwright.catalogue.faults import SetwrightError, UsageFault
from setwright.solver.foreign.log.log_file import read_log

sys.path.insert(0, str(Path(__file__).parents[1] / "sheets"))
from hostile import NAMES

HEAD = "date,exercise,load,reps,rir\n"
BENCH = "barbell-bench-press"


def row(**cells: str) -> str:
    """One row of HEAD's columns, a sound one but for the cells named."""
    sound = {"date": "2026-01-05", "exercise": "bench press", "load": "80", "reps": "8", "rir": "2"}
    return ",".join(f'"{cells.get(name, said)}"' for name, said in sound.items()) + "\n"


@pytest.mark.parametrize(
    ("column", "cell", "said"),
    [
        ("load", "-5", "got '-5', expected a load from 0 to 1000, or bw; leave the load of an assisted lift empty"),
        ("load", "1001", "got '1001', expected a load from 0 to 1000, or bw; is a decimal mark missing?"),
        ("load", "heavy", "got 'heavy', expected a load from 0 to 1000"),
        ("load", "=40*2", "write the value in place of the formula"),
        ("load", "1,000.5", "got '1,000.5', expected a load"),
        ("load", "80 st", "got '80 st', expected a load"),
        ("reps", "-1", "got '-1', expected a whole number from 0 to 100"),
        ("reps", "101", "got '101', expected a whole number from 0 to 100"),
        ("reps", "8.5", "got '8.5', expected a whole number from 0 to 100"),
        ("reps", "8-10", "got '8-10', expected a whole number from 0 to 100; write the repetitions that were done"),
        ("reps", "AMRAP", "write the repetitions that were done"),
        ("reps", "8-Oct", "is a date: the spreadsheet took repetitions such as 8-7 for one; type them as text"),
        ("reps", "", "a load without repetitions; write how many were done"),
        ("rir", "11", "got '11', expected repetitions in reserve from 0 to 10"),
        ("rir", "few", "got 'few', expected repetitions in reserve from 0 to 10"),
        ("date", "2026-02-30", "got '2026-02-30', which is no day of the calendar; expected a date such as 2026-01-05"),
        ("date", "yesterday", "got 'yesterday', expected a date such as 2026-01-05"),
        ("date", "46027", "got '46027', expected a date such as 2026-01-05"),
        ("date", "5 January", "got '5 January', expected a date such as 2026-01-05"),
        ("date", "05/01/26", "whose year is short; write the year in full, such as 2026-01-05"),
        ("date", "0206-01-05", "expected a date from 1950-01-01 on"),
        ("exercise", "levitation", "'levitation' is not in the catalogue, expected an exercise"),
        ("exercise", "", "is empty, expected an exercise's name"),
    ],
)
def test_a_bad_cell_is_named_by_its_row_and_column(column: str, cell: str, said: str) -> None:
    (fault,) = faults(HEAD + row(**{column: cell}))
    assert fault.startswith(f"line 2, {column}: ") and said in fault


def test_all_faults_are_told_at_once_and_nothing_is_read() -> None:
    text = HEAD + row(load="-5", reps="101") + row() + row(exercise="levitation", rir="12") + row(date="soon", load="x")
    assert [fault.split(": ")[0] for fault in faults(text)] == [
        *("line 2, reps", "line 2, load", "line 4, exercise", "line 4, rir", "line 5, date", "line 5, load")
    ]


def test_many_faults_are_counted_beyond_the_first_twenty() -> None:
    text = HEAD + "".join(row(load=f"x{n}") for n in range(2_000)) + "".join(row(load="heavy") for _ in range(3))
    told = faults(text)
    assert len(told) == 21 and told[-1] == "has 1983 more faults; mend these first"
    assert "line 2, load: got 'x0'" in told[0]


# ---- dates


@pytest.mark.parametrize(
    "cell",
    # ISO 8601: calendar date in extended and basic format, with a time of day.
    [
        *("2026-03-04", "20260304", "2026-03-04T18:03", "2026-03-04 18:03:20", "2026-03-04T18:03:20+02:00"),
        *("2026-03-04T18:03Z", "2026/3/4", "2026.03.04", "4 March 2026", "4-Mar-2026", "March 4, 2026"),
        *("Wed 4 Mar 2026", "4th March 2026", "4.3.2026"),
    ],
)
def test_a_date_that_can_mean_one_day_only_is_read(cell: str) -> None:
    assert read(HEAD + row(date=cell)).sessions[0].on == date(2026, 3, 4)


def test_a_time_beside_the_date_is_when_the_session_began() -> None:
    text = HEAD + row(date="2026-03-04 18:03") + row(date="2026-03-04 18:03")
    assert read(text).sessions[0].started == datetime(2026, 3, 4, 18, 3)
    found = read(HEAD + row(date="2026-03-04 18:03") + row(date="2026-03-04 18:09"))
    assert found.sessions[0].started is None and [r.text for r in found.unread] == ["18:03:00", "18:09:00"]


def test_an_ambiguous_date_is_refused_unless_other_rows_settle_the_order() -> None:
    (said,) = faults(HEAD + row(date="03/04/2026"))
    assert said == (
        "line 2, date: got '03/04/2026', which may be 2026-04-03 or 2026-03-04; write 2026-04-03 or 2026-03-04"
    )
    by_day = read(HEAD + row(date="03/04/2026") + row(date="13/04/2026"))
    by_month = read(HEAD + row(date="03/04/2026") + row(date="03/14/2026"))
    assert [found.sessions[0].on for found in (by_day, by_month)] == [date(2026, 4, 3), date(2026, 3, 4)]
    assert read(HEAD + row(date="05/05/2026")).sessions[0].on == date(2026, 5, 5)


def test_both_orders_in_one_column_are_refused() -> None:
    (said,) = faults(HEAD + row(date="13/04/2026") + row(date="04/14/2026"))
    assert said == "date: '13/04/2026' has the day first and '04/14/2026' the month; write every date as 2026-01-05"


def test_a_date_in_the_future_is_refused_where_today_is_given() -> None:
    (said,) = faults(HEAD + row(date="2027-01-05"))
    assert said == "line 2: 2027-01-05 is in the future, today is 2026-06-01; mend the date"
    assert read(HEAD + row(date="2027-01-05"), today=None).sessions


def test_dates_out_of_order_are_sorted() -> None:
    found = read(HEAD + row(date="2026-01-07") + row(date="2026-01-05"))
    assert [session.on.day for session in found.sessions] == [5, 7]


# ---- sessions


def test_ended_before_started_is_refused_and_local_times_are_taken_as_written() -> None:
    head = "date,exercise,reps,started,ended\n"
    (said,) = faults(head + "2026-01-05,pull-up,8,23:30,00:20\n")
    assert said == (
        "line 2: ended 2026-01-05 00:20, before it started 2026-01-05 23:30; "
        "write the date as well where it went past midnight"
    )
    (session,) = read(head + "2026-01-05,pull-up,8,23:30,2026-01-06 00:20\n").sessions
    assert session.ended == datetime(2026, 1, 6, 0, 20)
    # 02:30 does not exist on the first of these days in much of Europe, and exists twice on the second.
    for day in ("2026-03-29", "2025-10-26"):
        assert read(head + f"{day},pull-up,8,01:30,02:30\n").sessions[0].ended is not None


def test_rows_that_disagree_about_their_session_are_refused() -> None:
    head = "date,exercise,reps,started,minutes\n"
    told = faults(head + "2026-01-05,pull-up,8,18:00,50\n2026-01-05,pull-up,8,19:00,60\n")
    assert told == [
        "line 3, started: got '19:00', and another in line 2 for the same session; "
        "tell two sessions of a day apart by a column session",
        "line 3, minutes: got '60', and another in line 2 for the same session; keep one of them",
    ]


def test_a_session_that_stands_twice_is_refused() -> None:
    once = row() + row(exercise="squat")
    (said,) = faults(HEAD + once + row(date="2026-01-07") + once)
    assert said == "line 5: the session of 2026-01-05 stands twice, first in line 2; keep it once"


def test_a_set_number_that_stands_twice_is_refused() -> None:
    (said,) = faults("date,exercise,set,reps\n2026-01-05,pull-up,1,8\n2026-01-05,pull-up,1,7\n")
    assert said.startswith("line 3: set 1 of Pull-up stands twice in the session, first in line 2; number the sets")


def test_a_column_of_sets_that_numbers_them_is_refused_and_read_when_named() -> None:
    text = "date,exercise,sets,load,reps\n" + "".join(f"2026-01-05,bench press,{n},80,8\n" for n in (1, 2, 3))
    (said,) = faults(text)
    assert said.startswith("line 4, sets: counts 1, 2, 3 down the rows of one lift")
    assert said.endswith("say that the column sets is the set's number")
    assert only(text, columns={"set": "sets"}) == 3 * [(BENCH, 80, 8, None)]
    assert len(only("date,exercise,sets,load,reps\n2026-01-05,squat,1,100,3\n,,2,90,5\n")) == 3


def test_notes_beyond_their_length_are_refused() -> None:
    (said,) = faults(f"date,exercise,reps,note\n2026-01-05,pull-up,8,{2_001 * 'x'}\n")
    assert said == "line 2: has notes of 2010 letters, expected at most 2000; shorten them"


@pytest.mark.parametrize("name", NAMES.values(), ids=NAMES)
def test_a_hostile_heading_is_kept_or_named_on_one_line(name: str) -> None:
    quoted = name.replace("\0", "").replace('"', '""')
    assert read(f'date,exercise,reps,"{quoted}"\n2026-01-05,pull-up,8,x\n').unread[0].text.endswith("x")
    (said,) = faults(f'date,exercise,"{quoted}"\n2026-01-05,pull-up,x\n', columns={"reps": name.replace("\0", "")})
    assert said.isprintable() or not any(mark in said for mark in "\n\r\x1b")


# ---- units


def test_a_file_in_the_other_unit_throughout_is_taken_in_it_and_said() -> None:
    for text in (
        "date,exercise,load,reps,unit\n2026-01-05,bench press,180,8,lb\n",
        "date,exercise,load (lbs),reps\n2026-01-05,bench press,180,8\n",
        "date,exercise,lb,reps\n2026-01-05,bench press,180,8\n",
    ):
        found = read(text)
        assert [session.unit for session in found.sessions] == ["lb"]
        assert found.notes == ("the loads are in lb, as the file says, and not in kg",)
        assert sets(found.sessions[0]) == [(BENCH, 180, 8, None)]


def test_units_are_never_mixed() -> None:
    head = "date,exercise,load,reps,unit\n"
    (said,) = faults(head + "".join(f"2026-01-0{n},bench press,80,8,{'lb' if n > 3 else 'kg'}\n" for n in range(1, 9)))
    assert said == (
        "mixes units: kg in line 2, line 3 and line 4 and lb in line 5, line 6, line 7 and 2 further rows; "
        "kg and lb are never mixed: convert the loads, or split the file"
    )
    (said,) = faults(HEAD + row() + row(load="180 lb"))
    assert said.startswith("line 3 is in lb, the log is in kg; kg and lb are never mixed")
    assert said.endswith("where the whole file is in lb, say that its unit is lb")
    assert only(HEAD + row(load="180 lb"), unit="lb") == [(BENCH, 180, 8, 2)]
    (said,) = faults("date,exercise,load,reps,unit\n2026-01-05,bench press,80 kg,8,lb\n")
    assert "line 2 is in kg, the log is in lb" in said


# ---- headings and whole files


@pytest.mark.parametrize(
    ("text", "said"),
    [
        ("", "is empty; write a heading and a row for each set"),
        ("hello\nworld\n", "has no heading that names the lift and what was done"),
        (
            "date,excercise,reps\n2026-01-05,pull-up,8\n",
            "heading: the column 'exercise' is missing; is it 'excercise'?",
        ),
        ("date,exercise,repps\n2026-01-05,pull-up,8\n", "heading: the column 'reps' is missing; is it 'repps'?"),
        ("exercise,reps\npull-up,8\n", "line 2, date: has a set and no date; add a column of dates"),
        ("\0\1\2", "is not text"),
    ],
)
def test_a_table_without_its_columns_is_refused(text: str, said: str) -> None:
    assert said in faults(text)[0]


def test_columns_that_the_caller_names_wrongly_are_refused_with_the_nearest() -> None:
    text = "Datum,Lift,Reps\n2026-01-05,pull-up,8\n"
    assert faults(text, columns={"dat": "Datum", "lod": "Weight"}) == [
        "columns: 'dat' is no field of a log; did you mean 'date'?",
        "columns: 'lod' is no field of a log; did you mean 'load'?",
    ]
    assert faults(text, columns={"date": "Dattum"}) == [
        "heading: the column 'Dattum' is missing; is it 'Datum'? Then name that column"
    ]


def test_too_large_a_file_and_too_many_rows_and_names_are_refused() -> None:
    assert faults(b" " * 50_000_001) == ["is larger than 50 MB, expected one log; split the file"]
    wide = ",".join(["date", "exercise", "reps", *(f"c{n}" for n in range(200))])
    assert faults(wide) == ["has more than 200 columns; keep those of the log"]
    names = HEAD + "".join(row(exercise=f"lift {n} of none") for n in range(3_000))
    assert faults(names)[-1] == "has 2980 more faults; mend these first"
    assert "is 5000 letters long, expected an exercise" in faults(HEAD + row(exercise=5_000 * "x"))[0]


@pytest.mark.parametrize("name", NAMES.values(), ids=NAMES)
def test_a_hostile_text_in_any_cell_is_read_kept_or_refused(name: str) -> None:
    quoted = name.replace("\0", "").replace('"', '""')
    head = "date,session,exercise,load,reps,note,mood\n"
    found = read(head + f'2026-01-05,"{quoted}",pull-up,,8,"{quoted}","{quoted}"\n')
    assert [done.reps for done in found.sessions[0].sets] == [8]
    for column in ("date", "exercise", "load", "reps", "rir"):
        try:
            read(HEAD + row(**{column: quoted}))
        except SetwrightError as error:
            assert all("\n" not in str(fault) and "\x1b" not in str(fault) for fault in error.faults)


# ---- workbooks

COLUMNS = ("Date", "Exercise", "Load", "Reps")


def test_the_sheets_of_a_workbook_are_read_with_real_dates_and_numbers() -> None:
    data = workbook(
        {
            "Lower": [("My log",), COLUMNS, (datetime(2026, 1, 5), "Squat", 100.0, 5), (None, None, 102.5, 3.0)],
            "2026-01-06": [COLUMNS[1:], ("Bench press", "80x8x2")],
            "Sources": [("a book",)],
        }
    )
    found = read(data)
    assert [sets(session) for session in found.sessions] == [
        [("barbell-back-squat", 100, 5, None), ("barbell-back-squat", 102.5, 3, None)],
        [(BENCH, 80, 8, None), (BENCH, 80, 8, None)],
    ]
    assert [(left.place, left.text) for left in found.unread] == [
        ("Lower, row 1", "My log"),
        ("Sources, row 1", "a book"),
    ]


def test_merged_cells_stand_for_their_rows_under_date_and_lift_and_are_refused_elsewhere() -> None:
    rows = [COLUMNS, (date(2026, 1, 5), "Bench press", 80, 8), (None, None, None, 7), (None, None, None, 6)]
    assert [done[2] for done in only(workbook({"A": rows}, ["A2:A4", "B2:B4"]))] == [8, 7, 6]
    (said,) = faults(workbook({"A": rows}, ["C2:C4"]))
    assert (
        said
        == "A, C2:C4: is merged over several rows, so that it is not known whose it is; unmerge it, and fill each row"
    )


def test_a_formula_without_its_value_is_refused_by_its_cell() -> None:
    rows = [COLUMNS, (date(2026, 1, 5), "Bench press", "=40*2", 8), (None, None, 80, "=7+1")]
    assert faults(workbook({"A": rows})) == [
        f"A, {cell}: is a formula without its value; write the value" for cell in ("C2", "D3")
    ]


def test_faults_of_a_sheet_are_named_by_sheet_and_row() -> None:
    rows = [COLUMNS, (date(2026, 1, 5), "Bench press", -80, 8), (True, "Bench press", 80, 8.5)]
    told = faults(workbook({"Upper A": rows}))
    assert [fault.split(": ")[0] for fault in told] == [
        "Upper A, row 2, Load",
        "Upper A, row 3, Date",
        "Upper A, row 3, Reps",
    ]


def bomb() -> bytes:
    data = io.BytesIO()
    with zipfile.ZipFile(data, "w", zipfile.ZIP_DEFLATED) as package:
        package.writestr("xl/workbook.xml", b" " * 60_000_000)
    return data.getvalue()


def far_cell() -> bytes:
    import openpyxl

    book = openpyxl.Workbook()
    assert book.active is not None
    book.active["XFD1048576"] = 1
    data = io.BytesIO()
    book.save(data)
    return data.getvalue()


@pytest.mark.parametrize(
    ("make", "said"),
    [
        (lambda: b"PK\x03\x04 not really", "is no xlsx workbook; save it as xlsx"),
        (lambda: b"\xd0\xcf\x11\xe0\xa1\xb1\x1a\xe1" + bytes(5_000), "is protected by a password, or is an .xls"),
        (bomb, "unpacks to more than 50 MB, expected one log"),
        (far_cell, "has more than"),
        (lambda: workbook({"A": [("a book",)]}), "has no heading that names the lift and what was done"),
    ],
)
def test_a_workbook_that_is_none_or_hostile_says_why(make: Callable[[], bytes], said: str) -> None:
    with pytest.raises(UsageFault, match=said):
        read_log(make(), "log.xlsx", CATALOGUE, "kg")
