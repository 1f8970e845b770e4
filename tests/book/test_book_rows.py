"""What the book holds: nothing edited, nothing twice, health notes apart, a client whole or gone."""

from __future__ import annotations

import csv
import io
import json
import sqlite3
from datetime import date
from pathlib import Path

import pytest
from in_book import clients

from setwright.catalogue.faults import UsageFault
from setwright.solver.book.care import erase
from setwright.solver.book.clients import Client, add_client, brief_of, changes, client_of, keep_brief, rest
from setwright.solver.book.export import exported
from setwright.solver.book.opened import Book
from setwright.solver.book.paces import keep_pace
from setwright.solver.book.planned import block_on, blocks, keep_block, keep_week, week_starting
from setwright.solver.book.sessions import Kept, log_sessions, sessions_of, unread_of
from setwright.solver.log.unread import UnreadRow
from tests.book.conftest import RAW, session

MONDAY = date(2026, 5, 4)


def test_a_brief_comes_back_whole_its_health_notes_from_their_own_table(book: Book, client: Client) -> None:
    assert brief_of(book, client) == RAW
    assert client.brief["client"] == {"code": "M", "unit": "kg"}
    others = [row["name"] for row in book.rows("SELECT name FROM sqlite_master WHERE type = 'table'")]
    for table in others:
        written = "".join(str(tuple(row)) for row in book.rows(f"SELECT * FROM {table}"))
        assert ("knee" in written) == (table == "health"), table


def test_a_changed_brief_is_a_new_version_and_the_old_one_stays(book: Book, client: Client) -> None:
    changed = {**RAW, "days": [{"minutes": 30, "weekday": "mon"}]}
    after = keep_brief(book, client, changed, "30 minutes, one day")
    assert (client.version, after.version) == (1, 2)
    assert brief_of(book, after) == changed
    assert keep_brief(book, after, changed, "the same") == after
    assert [said for _, said in changes(book, after)] == ["30 minutes, one day"]
    assert len(book.rows("SELECT * FROM brief")) == 2


@pytest.mark.parametrize("code", ["", "@", "a b", "../x", "-x", "x" * 41, "a\nb"])
def test_a_code_that_cannot_be_one_is_refused(book: Book, code: str) -> None:
    with pytest.raises(UsageFault, match="expected letters"):
        add_client(book, code, RAW)
    assert clients(book) == ()


def test_a_taken_code_and_an_unknown_one_are_told(book: Book, client: Client) -> None:
    with pytest.raises(UsageFault, match="in the book already"):
        add_client(book, "@m", RAW)
    add_client(book, "Kim-2", RAW)
    with pytest.raises(UsageFault, match="Kim-2"):
        client_of(book, "@Kim2")


def test_rest_and_back_are_noted(book: Book, client: Client) -> None:
    assert rest(book, client, MONDAY).resting_since == MONDAY
    assert rest(book, client, None).resting_since is None
    assert [said for _, said in changes(book, client)] == ["at rest since 2026-05-04", "back"]


def test_the_same_sessions_twice_are_written_once(book: Book, client: Client) -> None:
    both, unread = [session(4), session(7, 2)], [UnreadRow("row 9", "felt good", "no column")]
    assert log_sessions(book, client, both, unread, b"file") == Kept(2, 0, 0)
    assert log_sessions(book, client, both, unread, b"file") == Kept(0, 2, 0)
    assert sessions_of(book, client) == tuple(both)
    assert unread_of(book, client) == tuple(unread)


def test_another_session_at_the_same_place_is_refused_whole_and_replaces_when_asked(book: Book, client: Client) -> None:
    log_sessions(book, client, [session(4)])
    with pytest.raises(UsageFault, match=r"2026-05-04, session 1.*--replace"):
        log_sessions(book, client, [session(11), session(4, reps=9)], source=b"other")
    assert sessions_of(book, client) == (session(4),)
    assert not book.rows("SELECT * FROM import")
    assert log_sessions(book, client, [session(4, reps=9)], replace=True) == Kept(1, 0, 1)
    assert sessions_of(book, client) == (session(4, reps=9),)
    assert len(book.rows("SELECT * FROM session")) == 2, "the old one is kept"


@pytest.mark.parametrize(
    "edit",
    [
        "UPDATE set_done SET reps = 99",
        "UPDATE session SET note = 'x'",
        "UPDATE brief SET document = '{}'",
        "DELETE FROM set_done",
        "DELETE FROM session",
        "DELETE FROM brief",
        "DELETE FROM client",
        "DELETE FROM block",
        "UPDATE block SET document = '{}'",
        "UPDATE week SET why = 'x'",
    ],
)
def test_no_row_of_what_was_done_or_planned_can_be_edited_or_dropped(book: Book, client: Client, edit: str) -> None:
    log_sessions(book, client, [session(4)])
    keep_block(book, client, MONDAY, date(2026, 6, 14), {})
    keep_week(book, client, MONDAY, {})
    with pytest.raises(sqlite3.IntegrityError):
        book.connection.execute(edit)


def test_a_block_that_begins_on_the_same_day_replaces_the_one_before(book: Book, client: Client) -> None:
    keep_block(book, client, MONDAY, date(2026, 6, 14), {"n": 1})
    keep_block(book, client, MONDAY, date(2026, 6, 14), {"n": 2})
    keep_block(book, client, date(2026, 6, 15), date(2026, 7, 12), {"n": 3})
    assert [block.document["n"] for block in blocks(book, client)] == [2, 3]
    found = [block_on(book, client, day) for day in (date(2026, 5, 20), date(2026, 6, 20), date(2027, 1, 1))]
    assert [block and block.document["n"] for block in found] == [2, 3, 3]


def test_the_newest_week_of_a_monday_holds(book: Book, client: Client) -> None:
    keep_week(book, client, MONDAY, {"n": 1})
    keep_week(book, client, MONDAY, {"n": 2}, "Thursday missed")
    found = week_starting(book, client, MONDAY)
    assert found is not None and (found.document, found.why) == ({"n": 2}, "Thursday missed")
    assert week_starting(book, client, date(2026, 5, 11)) is None


def test_what_is_exported_is_all_of_it_with_health_notes_in_their_own_file(book: Book, client: Client) -> None:
    log_sessions(book, client, [session(4), session(7, 2)])
    keep_block(book, client, MONDAY, date(2026, 6, 14), {"n": 1})
    keep_pace(book, client, {"basis": "session minutes"})
    client = keep_brief(book, client, {**RAW, "client": {"code": "M", "age": 65, "unit": "kg"}}, "a new brief")
    files = exported(book, client)
    rows = list(csv.DictReader(io.StringIO(files["sets.csv"].decode())))
    assert [(r["date"], r["exercise"], r["load"], r["reps"]) for r in rows[:2]] == [
        ("2026-05-04", "barbell-back-squat", "80.0", "7"),
        ("2026-05-04", "barbell-back-squat", "80.0", "6"),
    ]
    assert len(rows) == 4
    document = json.loads(files["client.json"])
    assert (document["code"], len(document["sessions"]), document["blocks"]) == ("M", 2, [{"n": 1}])
    assert b"knee" not in files["client.json"]
    assert document["paces"] == [{"basis": "session minutes"}]
    assert json.loads(files["health.json"]) == {"1": {"age": 64, "cautions": [{"tag": "knee"}]}, "2": {"age": 65}}


def test_an_erased_client_leaves_no_byte_and_the_others_stay(book: Book, client: Client, place: Path) -> None:
    other = add_client(book, "other", {**RAW, "client": {"code": "other"}})
    log_sessions(book, client, [session(4)], [UnreadRow("row 2", "wordsofthisone", "")], b"x")
    log_sessions(book, other, [session(5)])
    keep_block(book, client, MONDAY, date(2026, 6, 14), {"said": "wordsofthisone"})
    keep_block(book, client, MONDAY, date(2026, 6, 14), {"said": "wordsofthisone, again"})
    keep_week(book, client, MONDAY, {"said": "wordsofthisone"})
    erase(book, client)
    left = b"".join(path.read_bytes() for path in place.parent.iterdir())
    assert b"wordsofthisone" not in left and b"knee" not in left
    assert [c.code for c in clients(book)] == ["other"]
    assert sessions_of(book, other) == (session(5),)
    assert not book.rows("SELECT * FROM erasing")
