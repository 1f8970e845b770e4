"""The week as CSV: read back to the same entries, and nothing in it runs."""

from __future__ import annotations

import csv
import io
from dataclasses import replace

import pytest
from handed import PAIRS, THREE, document, handed, shipped
from hostile import NAMES, hostile
from hypothesis import given
from hypothesis import strategies as st

from setwright.catalogue.faults import UsageFault
from setwright.solver.reckoning.week import Entry
from setwright.solver.sheets.csv import COLUMNS, guarded, unguarded
from setwright.solver.sheets.csv import csv as as_csv
from setwright.solver.sheets.csv_reading import read_csv
from setwright.solver.sheets.reading import read_week

ENTRIES = st.builds(
    Entry,
    exercise=st.sampled_from(sorted(shipped().exercises)),
    sets=st.integers(1, 20),
    reps=st.tuples(st.integers(1, 100), st.integers(1, 100)).map(lambda ends: (min(ends), max(ends))),
    rir=st.integers(0, 10),
    rest=st.integers(0, 3600),
    technique=st.sampled_from(("straight", "rest-pause")),
    partner=st.none() | st.sampled_from(sorted(shipped().exercises)),
) | st.builds(
    Entry, st.just("pull-up"), st.just(2), st.just((8, 8)), st.just(1), st.just(60), st.just("drop"), st.integers(0, 5)
)


@given(st.lists(st.lists(ENTRIES, max_size=4), min_size=3, max_size=3))
def test_any_entries_come_back_the_same(days: list[list[Entry]]) -> None:
    h = handed()
    sessions, rows = [], []
    for session, entries in zip(h.sessions, days, strict=True):
        lines = tuple(
            replace(session.lines[0], exercise=entry.exercise, sets=entry.sets, rir=entry.rir) for entry in entries
        )
        sessions.append(replace(session, lines=lines))
        rows.append({"entries": [raw(entry) for entry in entries]})
    week = replace(h, sessions=tuple(sessions), document={**h.document, "days": rows})
    found = read_csv(as_csv(week), shipped())
    assert found == tuple((s.weekday, e) for s, entries in zip(h.sessions, days, strict=True) for e in entries)


def raw(entry: Entry) -> dict[str, object]:
    said: dict[str, object] = {"rest_seconds": entry.rest, "paired_with": entry.partner}
    return said | {"reps": list(entry.reps), "technique": entry.technique, "drops": entry.drops}


RUNS = ("=", "+", "-", "@", "\t", "\r", "\n", "\uff1d", "\uff0b", "\uff0d", "\uff20")
"""What OWASP's page on CSV injection names as the beginning of a formula."""


@pytest.mark.parametrize("name", [THREE, PAIRS])
def test_the_entries_come_back_the_same(name: str) -> None:
    _, week = read_week(document(name), shipped())
    found = read_csv(as_csv(handed(name)), shipped())
    days = [d["weekday"] for d in document(name)["days"]]
    assert found == tuple((day, entry) for day, entries in zip(days, week.days, strict=True) for entry in entries)


def test_it_is_utf8_with_crlf_and_the_documented_columns() -> None:
    """RFC 4180, section 2: lines end in CRLF, every row has as many fields as the header."""
    data = as_csv(handed())
    assert data.startswith(b"\xef\xbb\xbf")
    assert data.endswith(b"\r\n")
    assert data.count(b"\n") == data.count(b"\r\n")
    rows = list(csv.reader(io.StringIO(data.decode("utf-8-sig"), newline="")))
    assert tuple(rows[0]) == COLUMNS
    assert {len(row) for row in rows} == {len(COLUMNS)}


def test_numbers_are_numbers_and_reps_are_no_date() -> None:
    rows = list(csv.DictReader(io.StringIO(as_csv(handed()).decode("utf-8-sig"))))
    assert all(row[name].isdecimal() for row in rows for name in ("sets", "RIR", "rest"))
    assert rows[0]["reps"] == "6 to 8"


@pytest.mark.parametrize("name", NAMES)
def test_no_cell_is_a_formula(name: str) -> None:
    rows = list(csv.reader(io.StringIO(as_csv(hostile(NAMES[name])).decode("utf-8-sig"), newline="")))
    assert {len(row) for row in rows} == {len(COLUMNS)}
    cells = [cell for row in rows for cell in row]
    assert not [cell for cell in cells if cell.lstrip(" ").startswith(RUNS) or cell.lstrip().startswith(RUNS)]
    assert any(unguarded(cell) == NAMES[name] for cell in rows[1])


@given(st.text(alphabet=st.sampled_from("'=+-@ \t\r\na1"), max_size=8))
def test_a_guard_taken_off_gives_the_cell_back(text: str) -> None:
    once = guarded(text)
    assert isinstance(once, str)
    assert unguarded(once) == text
    assert not once.lstrip().startswith(RUNS)


def test_a_guard_leaves_numbers_alone() -> None:
    assert guarded(-3) == -3


HEAD = "day,exercise,sets,reps,RIR,rest,technique,pair\n"


def test_what_people_write_is_read() -> None:
    text = (
        "Rest,RIR,Reps,Sets,Exercise,Day,ignored\n1:30,2,6-8,3,Barbell back squat,Monday,x\n90,1,10,2,pull-up,2,\n,,,\n"
    )
    (one, squat), (two, pull) = read_csv(text.encode(), shipped())
    assert (one, squat.exercise, squat.reps, squat.rest) == ("mon", "barbell-back-squat", (6, 8), 90)
    assert (two, pull.reps, pull.technique, pull.partner) == ("2", (10, 10), "straight", None)


def test_every_fault_is_named_at_once() -> None:
    text = f"{HEAD}someday,barbel back squat,x,8 to,2,soon,cluster,\nmon,pull-up,2,12-8,1,60,drop x,nothing\n"
    with pytest.raises(UsageFault) as caught:
        read_csv(text.encode(), shipped(), "w.csv")
    found = [str(fault) for fault in caught.value.faults]
    assert [fault.split(": ")[1] for fault in found] == [
        "line 2, day", "line 2.exercise", "line 2.sets", "line 2.reps", "line 2.rest_seconds", "line 2.technique",
        "line 3.reps", "line 3.drops", "line 3.paired_with",
    ]  # fmt: skip


@pytest.mark.parametrize(
    ("data", "said"),
    [
        (b"", "the column 'day' is missing"),
        (b"day,day\n", "stands twice"),
        (b"\xff", "not UTF-8"),
        (HEAD.encode() + b'mon,"x\n', "is not CSV"),
        (b"x" * 5_000_000, "larger than 4 MB"),
        (HEAD.encode() + b"mon,pull-up,2,8,1,60,,\n" * 501, "at most 500"),
    ],
)
def test_a_file_that_is_no_week_says_why(data: bytes, said: str) -> None:
    with pytest.raises(UsageFault, match=said):
        read_csv(data, shipped())
