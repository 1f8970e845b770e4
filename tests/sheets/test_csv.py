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

from setwright.solver.evaluation.week import Entry
from setwright.solver.foreign.foreign_week import read_any
from setwright.solver.sheets.document.week_reader import read_week
from setwright.solver.sheets.handout.handout import Handout
from setwright.solver.sheets.plain.csv_file import COLUMNS, csv_bytes, guarded, unguarded

ENTRIES = st.builds(
    Entry,
    exercise=st.sampled_from(sorted(shipped().exercises)),
    sets=st.integers(1, 20),
    reps=st.tuples(st.integers(1, 100), st.integers(1, 100)).map(lambda ends: (min(ends), max(ends))),
    rir=st.integers(0, 10),
    rest=st.integers(0, 3600),
    technique=st.sampled_from(("straight", "rest-pause")),
) | st.builds(
    Entry, st.just("pull-up"), st.just(2), st.just((8, 8)), st.just(1), st.just(60), st.just("drop"), st.integers(1, 5)
)
DAYS = st.lists(st.lists(ENTRIES, max_size=4, unique_by=lambda e: e.exercise), min_size=3, max_size=3).filter(any)


@given(DAYS)
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
    assert read_back(week, THREE) == tuple(map(tuple, days))


def read_back(handout: Handout, name: str) -> tuple[tuple[Entry, ...], ...]:
    """The days of a written table, read as any foreign table is, for the brief of a stored week."""
    parsed, _ = read_week(document(name), shipped())
    return read_any(csv_bytes(handout), "week.csv", shipped(), parsed).week.days


def raw(entry: Entry) -> dict[str, object]:
    said: dict[str, object] = {"rest_seconds": entry.rest, "paired_with": entry.partner}
    return said | {"reps": list(entry.reps), "technique": entry.technique, "drops": entry.drops}


RUNS = ("=", "+", "-", "@", "\t", "\r", "\n", "\uff1d", "\uff0b", "\uff0d", "\uff20")
"""What OWASP's page on CSV injection names as the beginning of a formula."""


@pytest.mark.parametrize("name", [THREE, PAIRS])
def test_the_entries_come_back_the_same(name: str) -> None:
    _, week = read_week(document(name), shipped())
    assert read_back(handed(name), name) == week.days


def test_it_is_utf8_with_crlf_and_the_documented_columns() -> None:
    """RFC 4180, section 2: lines end in CRLF, every row has as many fields as the header."""
    data = csv_bytes(handed())
    assert data.startswith(b"\xef\xbb\xbf")
    assert data.endswith(b"\r\n")
    assert data.count(b"\n") == data.count(b"\r\n")
    rows = list(csv.reader(io.StringIO(data.decode("utf-8-sig"), newline="")))
    assert tuple(rows[0]) == COLUMNS
    assert {len(row) for row in rows} == {len(COLUMNS)}


def test_numbers_are_numbers_and_reps_are_no_date() -> None:
    rows = list(csv.DictReader(io.StringIO(csv_bytes(handed()).decode("utf-8-sig"))))
    assert all(row[name].isdecimal() for row in rows for name in ("sets", "RIR", "rest"))
    assert rows[0]["reps"] == "8 to 12"


@pytest.mark.parametrize("name", NAMES)
def test_no_cell_is_a_formula(name: str) -> None:
    rows = list(csv.reader(io.StringIO(csv_bytes(hostile(NAMES[name])).decode("utf-8-sig"), newline="")))
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
