"""The book's file: private, durable, migrated from every version, and refused where it cannot be trusted."""

from __future__ import annotations

import os
import sqlite3
import stat
from pathlib import Path

import pytest
from in_book import clients

from setwright.catalogue.faults import SetwrightError
from setwright.solver.book import migrations
from setwright.solver.book.care import backup, check
from setwright.solver.book.clients import Client, add_client, client_of
from setwright.solver.book.opened import APPLICATION, Book, open_book
from setwright.solver.book.place import BESIDE, VARIABLE, book_place
from setwright.solver.book.planned import keep_block, keep_week
from setwright.solver.book.sessions import log_sessions, sessions_of
from tests.book.conftest import RAW, session


def test_only_its_owner_can_read_it(book: Book, client: Client) -> None:
    for name in (book.path, book.path.with_name(f"{book.path.name}-wal")):
        assert stat.S_IMODE(name.stat().st_mode) == 0o600
    assert stat.S_IMODE(book.path.parent.stat().st_mode) == 0o700


@pytest.mark.parametrize("mode", [0o640, 0o604, 0o660])
def test_a_file_that_others_can_read_is_refused_with_the_remedy(place: Path, mode: int) -> None:
    with open_book(place):
        pass
    place.chmod(mode)
    with pytest.raises(SetwrightError, match=rf"permissions {mode:o}.*chmod 600") as raised, open_book(place):
        pass
    assert "knee" not in str(raised.value)


def test_writes_are_durable_and_references_are_held(book: Book) -> None:
    def pragma(name: str) -> object:
        return book.rows(f"PRAGMA {name}")[0][0]

    assert pragma("journal_mode") == "wal"
    assert pragma("synchronous") == 2, "FULL"
    assert pragma("foreign_keys") == 1
    assert pragma("secure_delete") == 1
    assert pragma("application_id") == APPLICATION
    assert pragma("user_version") == len(migrations.steps())
    assert {row["strict"] for row in book.rows("PRAGMA table_list") if row["name"][:6] != "sqlite"} == {1}


@pytest.mark.parametrize("version", range(len(migrations.steps())))
def test_a_book_of_each_earlier_version_keeps_what_it_holds(place: Path, version: int) -> None:
    place.parent.mkdir(mode=0o700)
    place.touch(0o600)
    old = sqlite3.connect(place, isolation_level=None)
    if version:
        old.execute(f"PRAGMA application_id = {APPLICATION}")
    migrations.migrate(old, version)
    if version:
        old.execute("INSERT INTO client (code, added) VALUES ('K', '2026-01-01T00:00:00Z')")
        old.execute("INSERT INTO brief (client, version, made, document) VALUES (1, 1, '', '{\"days\": []}')")
    old.close()
    with open_book(place) as book:
        assert [c.code for c in clients(book)] == (["K"] if version else [])
        assert not check(book)
        client = client_of(book, "K") if version else add_client(book, "K", RAW)
        log_sessions(book, client, [session(4)])
        assert sessions_of(book, client) == (session(4),)


def test_a_step_that_fails_leaves_the_version_before(place: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    with open_book(place) as book:
        client = add_client(book, "M", RAW)
    broken = (*migrations.steps(), "CREATE TABLE more (x INTEGER) STRICT;\nCREATE TABLE client (x INTEGER) STRICT;\n")
    monkeypatch.setattr(migrations, "steps", lambda: broken)
    monkeypatch.setattr("setwright.solver.book.opened.steps", lambda: broken)
    with pytest.raises(sqlite3.OperationalError), open_book(place):
        pass
    monkeypatch.undo()
    with open_book(place) as book:
        assert clients(book) == (client,)
        assert not book.rows("SELECT * FROM sqlite_master WHERE name = 'more'")


def test_a_newer_book_is_refused(place: Path) -> None:
    with open_book(place) as book:
        book.connection.execute("PRAGMA user_version = 99")
    with pytest.raises(SetwrightError, match=r"version 99.*up to"), open_book(place):
        pass


def test_another_program_s_database_is_left_alone(tmp_path: Path) -> None:
    place = tmp_path / "other.db"
    place.touch(0o600)
    other = sqlite3.connect(place)
    other.execute("CREATE TABLE theirs (x)")
    other.commit()
    other.close()
    before = place.read_bytes()
    with pytest.raises(SetwrightError, match="another program"), open_book(place):
        pass
    assert place.read_bytes() == before


@pytest.mark.parametrize("content", [b"not a database, but long enough to have a header" * 40, b"\0" * 4096])
def test_what_is_no_book_is_refused(tmp_path: Path, content: bytes) -> None:
    place = tmp_path / "notes.txt"
    place.write_bytes(content)
    place.chmod(0o600)
    with pytest.raises(SetwrightError, match=r"is no book|damaged"), open_book(place):
        pass
    assert place.read_bytes() == content


def test_a_corrupt_page_is_said_and_nothing_is_written(place: Path) -> None:
    with open_book(place) as book:
        client = add_client(book, "M", RAW)
        log_sessions(book, client, [session(day) for day in range(1, 29)])
    data = bytearray(place.read_bytes())
    root = len(data) // 2 // 4096 * 4096
    data[root : root + 3 * 4096] = b"\xff" * (3 * 4096)
    place.write_bytes(data)
    with pytest.raises(SetwrightError, match="damaged"), open_book(place) as book:
        check(book)
    assert place.read_bytes() == data


def test_a_folder_and_a_place_that_cannot_be_made_are_refused(tmp_path: Path) -> None:
    with pytest.raises(SetwrightError, match="is a folder"), open_book(tmp_path):
        pass
    blocked = tmp_path / "file"
    blocked.write_text("")
    with pytest.raises(SetwrightError, match="cannot be opened"), open_book(blocked / "book.db"):
        pass


@pytest.mark.skipif(os.geteuid() == 0, reason="root may write anywhere")
def test_a_read_only_book_says_so(place: Path) -> None:
    with open_book(place) as book:
        client = add_client(book, "M", RAW)
    place.chmod(0o400)
    with pytest.raises(SetwrightError, match="cannot be"), open_book(place) as book:
        log_sessions(book, client, [session(4)])


def test_a_full_disk_writes_nothing(book: Book, client: Client) -> None:
    pages = book.rows("PRAGMA page_count")[0][0]
    book.connection.execute(f"PRAGMA max_page_count = {pages + 1}")
    with pytest.raises(SetwrightError, match="disk is full"):
        log_sessions(book, client, [session(day) for day in range(1, 29)] * 40)
    book.connection.execute("PRAGMA max_page_count = 1000000")
    assert sessions_of(book, client) == ()
    assert not check(book)


def test_a_second_writer_waits_or_is_told(place: Path) -> None:
    with open_book(place) as one, open_book(place, wait=0.05) as other:
        client = add_client(one, "M", RAW)
        with one.writing():
            with pytest.raises(SetwrightError, match="another process is writing"):
                keep_week(other, client, session(4).on, {})
            assert client_of(other, "M") == client, "reading goes on"
        keep_week(other, client, session(4).on, {})


def test_a_backup_is_whole_private_and_never_over_a_file(book: Book, client: Client, tmp_path: Path) -> None:
    log_sessions(book, client, [session(4)])
    keep_block(book, client, session(4).on, session(28).on, {"weeks": []})
    target = tmp_path / "copy.db"
    backup(book, target)
    assert stat.S_IMODE(target.stat().st_mode) == 0o600
    with open_book(target) as copy:
        assert sessions_of(copy, client_of(copy, "M")) == (session(4),)
    before = target.read_bytes()
    with pytest.raises(SetwrightError, match="a file already"):
        backup(book, target)
    assert target.read_bytes() == before


def test_the_place_is_the_named_one_then_the_environment_s_then_the_folder_s_then_the_user_s(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.chdir(tmp_path)
    monkeypatch.delenv(VARIABLE, raising=False)
    monkeypatch.setenv("XDG_DATA_HOME", str(tmp_path / "data"))
    assert book_place() == tmp_path / "data" / "setwright" / BESIDE
    (tmp_path / BESIDE).touch()
    assert book_place() == Path(BESIDE)
    monkeypatch.setenv(VARIABLE, "said.db")
    assert book_place() == Path("said.db")
    assert book_place(Path("named.db")) == Path("named.db")
