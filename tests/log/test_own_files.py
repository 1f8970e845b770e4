"""Our own files: the filled-in workbook, a card's table with its boxes filled, and the log's document."""

from __future__ import annotations

import csv
import io
import json
from collections.abc import Callable, Mapping
from dataclasses import replace
from datetime import date, datetime
from typing import Any

import openpyxl
import pytest
from handed import handed
from hypothesis import given, settings
from hypothesis import strategies as st
from jsonschema import Draft202012Validator
from read_logs import CATALOGUE, faults, filled, places, read, sets

from setwright.solver.log.unread import UnreadRow
from setwright.solver.log.values import LoggedSession, LoggedSet
from setwright.solver.sheets.common.json_values import dumped
from setwright.solver.sheets.document.printed_schema import log_schema
from setwright.solver.sheets.document.progress.log_model import log_document
from setwright.solver.sheets.plain.csv_file import csv_bytes, guarded
from setwright.solver.sheets.xlsx import log_keys

FIRST = [session.lines[0].exercise for session in handed().sessions]

# ---- the workbook


def test_a_filled_in_workbook_gives_its_sessions() -> None:
    found = read(filled())
    assert [session.on for session in found.sessions] == [date(2026, 1, day) for day in (5, 6, 7)]
    assert [sets(session) for session in found.sessions] == [[(lift, 20, 8, None)] for lift in FIRST]
    assert [(s.session, s.minutes, s.how_hard) for s in found.sessions] == [(n, 38, 8) for n in (1, 2, 3)]
    assert found.sessions[0].note == "went well; Hack squat: felt easy"
    assert found.notes == ("session 1, session 2 and session 3: how hard 7.5 was read as 8",)


def test_a_session_that_was_not_done_is_left_out_and_one_without_a_date_is_a_fault() -> None:
    def empty(book: Any) -> None:
        for sheet, wiped in ((book.worksheets[1], True), (book.worksheets[2], False)):
            keys, rows = places(sheet)
            for name, row in rows.items():
                for column in (*range(keys["load-1"], keys[log_keys.NOTES] + 1),):
                    if wiped or name == log_keys.DATE:
                        cell = sheet.cell(row, column)
                        if not isinstance(cell, openpyxl.cell.cell.MergedCell):
                            cell.value = None

    assert faults(filled(empty)) == ["session 2: has sets and no date; write it in the row @date"]


def test_the_cells_of_a_workbook_that_are_amiss_are_named() -> None:
    def spoil(book: Any) -> None:
        keys, rows = places(book.worksheets[1])
        book.worksheets[1].cell(rows[FIRST[0]], keys["load-1"], -20)
        book.worksheets[1].cell(rows[FIRST[0]], keys[log_keys.ID], "levitation")

    (said,) = faults(filled(spoil))
    assert said.startswith("Monday!") and "got '-20', expected a number from 0 to 1000" in said


def test_a_workbook_in_the_other_unit_is_refused() -> None:
    (said,) = faults(filled(), unit="lb")
    assert said.startswith("Monday: its loads are in kg, the log is in lb") and "never mixed" in said


def test_a_session_sheet_saved_as_csv_is_the_same_session() -> None:
    sheet = openpyxl.load_workbook(io.BytesIO(filled())).worksheets[1]
    out = io.StringIO()
    for row in sheet.iter_rows(values_only=True):
        csv.writer(out).writerow(
            ["" if v is None else v.date().isoformat() if isinstance(v, datetime) else v for v in row]
        )
    assert read(out.getvalue()).sessions == read(filled()).sessions[:1]


# ---- a card's table


def card_table(done: Mapping[int, Mapping[str, str]]) -> str:
    """The fixed week's table with more columns; line of the table, counted from 1 -> column -> cell."""
    rows = list(csv.DictReader(io.StringIO(csv_bytes(handed()).decode("utf-8-sig"))))
    more = dict.fromkeys(name for cells in done.values() for name in cells)
    out = io.StringIO()
    table = csv.DictWriter(out, [*rows[0], *(name for name in more if name not in rows[0])])
    table.writeheader()
    for place, row in enumerate(rows, 1):
        table.writerow({**row, **done.get(place, {})})
    return out.getvalue()


def test_a_card_with_its_boxes_filled_gives_what_was_done_and_not_what_was_planned() -> None:
    text = card_table(
        {
            1: {"date": "2026-01-05", "load-1": "60", "reps-1": "10", "rir-1": "2", "load-2": "60", "reps-2": "9"},
            2: {"load-1": "25,5", "reps-1": "12", "notes": "felt easy"},
        }
    )
    found = read(text)
    (session,) = found.sessions
    assert sets(session) == [
        ("hack-squat", 60, 10, 2),
        ("hack-squat", 60, 9, None),
        ("cable-face-pull", 25.5, 12, None),
    ]
    assert session.note == "Cable face pull: felt easy" and found.unread == () and found.notes == ()


def test_a_card_holds_its_date_for_its_own_session_only() -> None:
    last = len(csv_bytes(handed()).decode().splitlines()) - 1
    (said,) = faults(card_table({1: {"date": "2026-01-05", "reps-1": "10"}, last: {"reps-1": "8"}}))
    assert said == f"line {last + 1}, date: has a set and no date; write its day"


def test_an_unfilled_card_has_no_session() -> None:
    assert read(card_table({1: {"date": "2026-01-05", "reps-1": ""}})).sessions == ()


# ---- the document

LIFTS = sorted(CATALOGUE.exercises)
TIMES = st.none() | st.datetimes(datetime(2026, 1, 1), datetime(2026, 5, 1)).map(lambda t: t.replace(microsecond=0))
LOADS = st.none() | st.decimals(0, 1000, places=2).map(float)
COLUMNS = (
    *("date", "session", "week", "started", "ended", "minutes", "how hard", "note"),
    *("exercise", "set", "load", "reps", "rir", "side"),
)
WORDS = st.text(st.characters(exclude_categories=["Cs", "Cc", "Zl", "Zp", "Zs"]), max_size=30)


@st.composite
def logged(draw: st.DrawFn) -> tuple[LoggedSession, ...]:
    """Sessions on different days, each lift's sets numbered from 1."""
    found = []
    for day in draw(st.lists(st.integers(1, 28), unique=True, max_size=4).map(sorted)):
        counted: dict[tuple[str, str | None], int] = {}
        done = []
        for _ in range(draw(st.integers(1, 6))):
            key = (draw(st.sampled_from(LIFTS)), draw(st.sampled_from([None, "left", "right"])))
            counted[key] = counted.get(key, 0) + 1
            some = draw(st.tuples(st.integers(0, 100), LOADS, st.none() | st.integers(0, 10)))
            done.append(LoggedSet(key[0], counted[key], some[0], some[1], some[2], key[1]))  # type: ignore[arg-type]
        start, end = draw(st.tuples(TIMES, TIMES))
        if start and end and end < start:
            start, end = end, start
        found.append(
            LoggedSession(
                on=date(2026, 2, day),
                sets=tuple(done),
                unit=draw(st.just("kg")),
                week=draw(st.none() | st.integers(1, 520)),
                session=draw(st.none() | st.integers(1, 7)),
                started=start,
                ended=end,
                minutes=draw(st.none() | st.decimals(0, 600, places=1).map(float)),
                how_hard=draw(st.none() | st.integers(0, 10)),
                note=draw(WORDS),
            )
        )
    starts = [session.started for session in found if session.started]
    return tuple(found) if len(set(starts)) == len(starts) else tuple(found[:1])


@settings(max_examples=60, deadline=None, derandomize=True)
@given(logged(), st.sampled_from(["kg", "lb"]))
def test_a_document_is_read_as_it_was_written(sessions: tuple[LoggedSession, ...], unit: str) -> None:
    left = (UnreadRow("line 4", "mood: good", "stands in columns that are not read"),)
    written = dumped(log_document(sessions, left))
    found = read(written, unit=unit)
    assert (found.sessions, found.unread, found.notes) == (sessions, left, ())
    assert dumped(log_document(found.sessions, found.unread)) == written
    Draft202012Validator(log_schema()).validate(json.loads(written))
    Draft202012Validator(log_schema("serialization")).validate(json.loads(written))


@settings(max_examples=60, deadline=None, derandomize=True)
@given(logged(), st.sampled_from([",", ";", "\t"]), st.sampled_from([csv.QUOTE_MINIMAL, csv.QUOTE_ALL]))
def test_a_table_is_read_as_it_was_written(sessions: tuple[LoggedSession, ...], mark: str, quoting: Any) -> None:
    out = io.StringIO()
    table = csv.writer(out, delimiter=mark, quoting=quoting)
    table.writerow(COLUMNS)
    for s in sessions:
        about = [s.week, s.started, s.ended, s.minutes, s.how_hard, guarded(s.note) or None]
        if any(value is not None for value in about):
            table.writerow([s.on, s.session, *about])
        for d in s.sets:
            reps = f"{d.reps} breaths" if CATALOGUE.exercises[d.exercise].timed else d.reps
            table.writerow([s.on, s.session, *([""] * 6), d.exercise, d.number, d.load, reps, d.rir, d.side])
    found = read(out.getvalue())
    assert [_by_lift(session) for session in found.sessions] == [_by_lift(session) for session in sessions]
    assert found.unread == ()


def _by_lift(session: LoggedSession) -> LoggedSession:
    """A session with the sets of each side by number: a table numbers a lift's sides apart and sorts by number."""
    return replace(session, sets=tuple(sorted(session.sets, key=lambda s: (s.exercise, s.side or "", s.number))))


def document(change: Callable[[dict[str, Any]], object]) -> str:
    session = LoggedSession(date(2026, 1, 5), (LoggedSet("pull-up", 1, 8),))
    whole = log_document([session, session.__class__(date(2026, 1, 7), session.sets)])
    change(whole)
    return json.dumps(whole)


def first(whole: dict[str, Any]) -> dict[str, Any]:
    found: dict[str, Any] = whole["sessions"][0]
    return found


@pytest.mark.parametrize(
    ("change", "said"),
    [
        (lambda d: d.update(schema="setwright.week/1"), "schema: got 'setwright.week/1', expected 'setwright.log/1'"),
        (lambda d: d.pop("sessions"), "sessions: is missing, expected a list"),
        (lambda d: first(d).update(on="05.01.2026"), "sessions[0].on: got '05.01.2026', expected a date such as"),
        (
            lambda d: first(d).update(started="18:03"),
            "started: got '18:03', expected a local date and time",
        ),
        (lambda d: first(d).update(ended="2026-01-05T18:03Z"), "which has a zone; write the local time alone"),
        (lambda d: first(d).update(unit="stone"), "sessions[0].unit: got 'stone', expected 'kg' or 'lb'"),
        (lambda d: first(d).update(note=2_001 * "x"), "sessions[0].note: is 2001 letters long, expected at most 2000"),
        (
            lambda d: first(d).update(how_hard=7.5),
            "how_hard: got 7.5, expected a whole number from 0 to 10",
        ),
        (
            lambda d: first(d)["sets"][0].update(load=-1),
            "sets[0].load: got -1, expected a number from 0 to 1000",
        ),
        (lambda d: first(d)["sets"][0].update(reps=101), "reps: got 101, expected a whole number from 0 to 100"),
        (lambda d: first(d)["sets"][0].update(exercise="pul-up"), "did you mean 'Pull-up'"),
        (lambda d: first(d)["sets"].append(first(d)["sets"][0]), "sets[1]: set 1 of Pull-up stands twice"),
        (
            lambda d: d["sessions"].append(first(d)),
            "sessions[2]: the session of 2026-01-05 stands twice, first",
        ),
        (lambda d: first(d).update(on="2027-01-05"), "sessions[0]: 2027-01-05 is in the future, today is 2026-06-01"),
    ],
)
def test_a_document_that_is_amiss_says_where(change: Callable[[dict[str, Any]], object], said: str) -> None:
    (fault,) = faults(document(change))
    assert said in fault


@pytest.mark.parametrize(
    ("text", "said"),
    [
        ("[1, 2]", "is [1, 2], expected a log as an object"),
        ("{", "is not JSON: "),
        ('{"schema": "setwright.log/1", "sessions": [' + "[" * 3_000, "is not JSON: "),
        ('{"schema": "setwright.log/1", "sessions": [], "x": NaN}', "x: got nan, expected a number"),
    ],
)
def test_json_that_is_no_log_says_why(text: str, said: str) -> None:
    assert said in faults(text)[0]


def test_the_schema_is_a_json_schema() -> None:
    Draft202012Validator.check_schema(log_schema())
