"""Acts on a client taken back and done again: as if they had not been done, and nothing lost."""

from __future__ import annotations

import json
import random
import sqlite3
from datetime import date, timedelta
from pathlib import Path
from typing import Any

import pytest

from setwright.catalogue.faults import UsageFault
from setwright.solver.book import migrations
from setwright.solver.book.care import check, erase
from setwright.solver.book.clients import Client, add_client, brief_of, changes, client_of, keep_brief, rest, set_name
from setwright.solver.book.export import exported
from setwright.solver.book.opened import APPLICATION, Book, open_book
from setwright.solver.book.paces import keep_pace
from setwright.solver.book.planned import block_on, blocks, keep_block, keep_week, kept_weeks, week_starting
from setwright.solver.book.sessions import log_sessions, sessions_of
from setwright.solver.book.stamps import news_since, version_stamp
from setwright.solver.book.undone import acts, do_again, journal_of, take_back
from tests.book.conftest import RAW, session

MONDAY = date(2026, 5, 4)
END = date(2026, 6, 14)
TABLES = ("brief", "health", "week", "block", "session", "set_done", "import", "unread")


def shown(book: Book) -> tuple[Any, ...]:
    """Everything that a reader sees of client M's brief, weeks, blocks and log."""
    client = client_of(book, "M")
    weeks = tuple((w.starts, w.why, w.document) for w in kept_weeks(book, client))
    return (
        brief_of(book, client),
        weeks,
        tuple((b.starts, b.ends, b.document) for b in blocks(book, client)),
        sessions_of(book, client),
    )


def act_at_random(book: Book, choice: random.Random, number: int) -> None:
    """One act on client M that changes something."""
    client = client_of(book, "M")
    monday = MONDAY + timedelta(weeks=choice.randrange(2))
    match choice.randrange(5):
        case 0:
            keep_brief(book, client, {**RAW, "title": f"title {number}"}, f"title {number}")
        case 1:
            keep_week(book, client, monday, {"n": number}, f"reason {number}")
        case 2:
            keep_block(book, client, monday, END, {"n": number})
        case 3:
            log_sessions(book, client, [session(4 + choice.randrange(2), reps=30 + number)], replace=True)
        case 4:
            both = [session(day, reps=200 + number) for day in (5, 6)]
            log_sessions(book, client, both, source=f"file {number}".encode(), replace=True)


@pytest.mark.parametrize("seed", range(12))
def test_any_row_of_acts_taken_back_and_done_again_shows_what_stood_then(book: Book, client: Client, seed: int) -> None:
    choice = random.Random(seed)
    before, after = [shown(book)], []
    for number in range(60):
        what = choice.choice(("act", "act", "back", "back", "again"))
        if what == "act":
            act_at_random(book, choice, number)
            before.append(shown(book))
            after.clear()
        elif what == "back" and len(before) > 1:
            take_back(book, client)
            after.append(before.pop())
        elif what == "again" and after:
            do_again(book, client)
            before.append(after.pop())
        assert shown(book) == before[-1]
        assert len(acts(book, client)) == len(before) - 1
    assert not check(book)


def test_taking_back_drops_no_row_and_edits_none(book: Book, client: Client) -> None:
    keep_brief(book, client, {**RAW, "title": "x"}, "a title")
    log_sessions(book, client, [session(4)])
    keep_week(book, client, MONDAY, {"n": 1})
    held = {table: [tuple(row) for row in book.rows(f"SELECT * FROM {table}")] for table in TABLES}
    for _ in range(3):
        take_back(book, client)
    assert {table: [tuple(row) for row in book.rows(f"SELECT * FROM {table}")] for table in TABLES} == held


def test_acts_are_said_in_plain_words_the_newest_first(place: Path) -> None:
    with open_book(place, through="the desk") as book:
        client = add_client(book, "M", RAW)
        keep_brief(book, client, {**RAW, "client": {**RAW["client"], "age": 65}}, "a new brief")
        keep_week(book, client, date(2026, 11, 30), {}, "found on the desk")
        keep_block(book, client, MONDAY, END, {})
        log_sessions(book, client, [session(4)])
        log_sessions(book, client, [session(9), session(5)], source=b"file")
        found = acts(book, client)
    assert [act.said for act in found] == [
        "2 sessions of 5 May 2026 to 9 May 2026",
        "session of 4 May 2026",
        "block of 4 May 2026 to 14 Jun 2026",
        "week of 30 Nov 2026, found on the desk",
        "brief: a new brief",
    ]
    assert {act.through for act in found} == {"the desk"}
    assert [kind for kind, _ in found[0].rows] == ["session", "session"]


def test_the_first_brief_is_no_act_and_nothing_is_taken_back_twice(book: Book, client: Client) -> None:
    with pytest.raises(UsageFault, match="nothing was done that can be taken back"):
        take_back(book, client)
    with pytest.raises(UsageFault, match="nothing was taken back"):
        do_again(book, client)
    keep_week(book, client, MONDAY, {})
    take_back(book, client)
    with pytest.raises(UsageFault, match="can be taken back"):
        take_back(book, client)


def test_a_new_act_ends_what_could_be_done_again_for_good(book: Book, client: Client) -> None:
    for number in (1, 2):
        keep_week(book, client, MONDAY, {"n": number})
    take_back(book, client)
    keep_week(book, client, MONDAY, {"n": 3})
    with pytest.raises(UsageFault, match="once something new is done"):
        do_again(book, client)
    take_back(book, client)
    held = week_starting(book, client, MONDAY)
    assert held is not None and held.document == {"n": 1}
    do_again(book, client)
    held = week_starting(book, client, MONDAY)
    assert held is not None and held.document == {"n": 3}


def test_a_block_planned_where_one_was_taken_back_replaces_the_one_that_holds(book: Book, client: Client) -> None:
    for number in (1, 2):
        keep_block(book, client, MONDAY, END, {"n": number})
    take_back(book, client)
    keep_block(book, client, MONDAY, END, {"n": 3})
    assert [block.document["n"] for block in blocks(book, client)] == [3]
    for _ in range(2):
        take_back(book, client)
    assert blocks(book, client) == () and block_on(book, client, MONDAY) is None


def test_a_session_corrected_after_a_correction_was_taken_back(book: Book, client: Client) -> None:
    log_sessions(book, client, [session(4)])
    log_sessions(book, client, [session(4, reps=9)], replace=True)
    take_back(book, client)
    assert sessions_of(book, client) == (session(4),)
    with pytest.raises(UsageFault, match="--replace"):
        log_sessions(book, client, [session(4, reps=12)])
    log_sessions(book, client, [session(4, reps=12)], replace=True)
    assert sessions_of(book, client) == (session(4, reps=12),)


def test_an_import_taken_back_can_be_read_in_again(book: Book, client: Client) -> None:
    log_sessions(book, client, [session(4)], source=b"file")
    take_back(book, client)
    assert log_sessions(book, client, [session(4)], source=b"file").written == 1
    assert sessions_of(book, client) == (session(4),)


def test_what_is_written_in_one_transaction_is_one_act(book: Book, client: Client) -> None:
    with book.writing():
        keep_week(book, client, MONDAY, {"n": 1})
        keep_week(book, client, date(2026, 5, 11), {"n": 2})
    assert acts(book, client)[0].said.count("week of") == 2
    take_back(book, client)
    assert kept_weeks(book, client) == ()


def test_a_part_of_a_transaction_that_fails_leaves_the_rest(book: Book, client: Client) -> None:
    with book.writing():
        with pytest.raises(ZeroDivisionError), book.writing():
            keep_week(book, client, MONDAY, {"n": 1})
            raise ZeroDivisionError
        keep_week(book, client, MONDAY, {"n": 2})
    assert [week.document for week in kept_weeks(book, client)] == [{"n": 2}]
    assert len(acts(book, client)) == 1


def test_others_are_left_alone(book: Book, client: Client) -> None:
    other = add_client(book, "other", {**RAW, "client": {"code": "other"}})
    keep_week(book, other, MONDAY, {"n": 1})
    keep_week(book, client, MONDAY, {"n": 2})
    take_back(book, client)
    assert len(kept_weeks(book, other)) == 1 and len(acts(book, other)) == 1


def test_what_was_written_before_acts_were_kept_can_be_taken_back(place: Path) -> None:
    place.parent.mkdir(mode=0o700)
    place.touch(0o600)
    old = sqlite3.connect(place, isolation_level=None)
    old.execute(f"PRAGMA application_id = {APPLICATION}")
    migrations.migrate(old, 4)
    old.execute("INSERT INTO client (code, added) VALUES ('M', '2026-01-01T00:00:00Z')")
    for version, made in ((1, "2026-01-01T00:00:00Z"), (2, "2026-01-03T00:00:00Z")):
        document = json.dumps({**RAW, "title": str(version)})
        values = (1, version, made, document)
        old.execute("INSERT INTO brief (client, version, made, document) VALUES (?, ?, ?, ?)", values)
    old.execute("INSERT INTO change (client, made, said) VALUES (1, '2026-01-03T00:00:00Z', 'another title')")
    old.execute(
        "INSERT INTO week (client, starts, made, document) VALUES (1, '2026-01-05', '2026-01-04T00:00:00Z', '{}')"
    )
    old.execute("INSERT INTO import (client, made, digest) VALUES (1, '2026-01-02T00:00:00Z', 'x')")
    for day, source in ((5, 1), (7, 1), (9, None)):
        values = (f"2026-01-0{day}", source)
        fields = "client, made, unit, held_on, import"
        old.execute(f"INSERT INTO session ({fields}) VALUES (1, '2026-01-02T00:00:00Z', 'kg', ?, ?)", values)
    old.close()
    with open_book(place) as book:
        client = client_of(book, "M")
        assert not check(book)
        assert [act.said for act in acts(book, client)] == [
            "week of 5 Jan 2026",
            "brief: another title",
            "session of 9 Jan 2026",
            "2 sessions of 5 Jan 2026 to 7 Jan 2026",
        ]
        for _ in range(4):
            take_back(book, client)
        assert (sessions_of(book, client), kept_weeks(book, client)) == ((), ())
        assert client_of(book, "M").brief["title"] == "1"


def test_every_write_on_a_client_changes_the_stamp_and_no_other_s(book: Book, client: Client) -> None:
    other = add_client(book, "other", {**RAW, "client": {"code": "other"}})
    theirs, seen = version_stamp(book, other), {version_stamp(book, client)}

    def changed() -> None:
        stamp = version_stamp(book, client_of(book, "M"))
        assert stamp not in seen and stamp == version_stamp(book, client_of(book, "M"))
        seen.add(stamp)

    keep_week(book, client, MONDAY, {})
    changed()
    keep_block(book, client, MONDAY, END, {})
    changed()
    log_sessions(book, client, [session(4)])
    changed()
    keep_brief(book, client, {**RAW, "title": "x"}, "a title")
    changed()
    keep_pace(book, client, {})
    changed()
    rest(book, client, MONDAY)
    changed()
    set_name(book, client, "Somebody")
    changed()
    take_back(book, client)
    changed()
    do_again(book, client)
    changed()
    assert version_stamp(book, other) == theirs


def test_what_was_done_since_a_stamp_is_told_once(book: Book, client: Client) -> None:
    keep_week(book, client, MONDAY, {})
    stamp = version_stamp(book, client)
    assert news_since(book, client, stamp) == ()
    keep_brief(book, client, {**RAW, "title": "x"}, "a title")
    rest(book, client, MONDAY)
    take_back(book, client)
    said = sorted(news.said for news in news_since(book, client, stamp))
    assert said == ["at rest since 2026-05-04", "brief: a title", "taken back: brief: a title"]
    with pytest.raises(UsageFault, match="show the page anew"):
        news_since(book, client, "x")


def test_notes_tell_of_what_was_taken_back(book: Book, client: Client) -> None:
    keep_week(book, client, MONDAY, {})
    take_back(book, client)
    do_again(book, client)
    assert [said for _, said in changes(book, client)] == [
        "taken back: week of 4 May 2026",
        "done again: week of 4 May 2026",
    ]
    document = json.loads(exported(book, client)["client.json"])
    assert [act["said"] for act in document["acts"]] == [act.said for act in journal_of(book, client).all]


@pytest.mark.parametrize(
    "edit", ["UPDATE act SET said = 'x'", "DELETE FROM act", "UPDATE act_row SET row = 9", "DELETE FROM act_row"]
)
def test_no_act_can_be_edited_or_dropped(book: Book, client: Client, edit: str) -> None:
    keep_week(book, client, MONDAY, {})
    with pytest.raises(sqlite3.IntegrityError):
        book.connection.execute(edit)


def test_an_erased_client_leaves_no_act(book: Book, client: Client, place: Path) -> None:
    keep_brief(book, client, {**RAW, "title": "x"}, "wordsofthisone")
    keep_week(book, client, MONDAY, {})
    take_back(book, client)
    erase(book, client)
    assert b"wordsofthisone" not in b"".join(path.read_bytes() for path in place.parent.iterdir())
    assert not book.rows("SELECT * FROM act") and not book.rows("SELECT * FROM act_row")
