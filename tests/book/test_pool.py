"""A book kept open between two uses: never by two at once, never another file, a lost version or a file for all."""

from __future__ import annotations

import os
import sqlite3
import threading
from collections.abc import Iterator
from pathlib import Path

import pytest
from in_book import clients

from setwright.catalogue.faults import Fault, SetwrightError, UsageFault
from setwright.solver.book.care import erase
from setwright.solver.book.clients import add_client, client_of
from setwright.solver.book.migrations import steps
from setwright.solver.book.opened import Book, open_book
from setwright.solver.book.pool import MOST_IDLE, BookPool
from tests.book.conftest import RAW


@pytest.fixture
def pool(place: Path) -> Iterator[BookPool]:
    pool = BookPool(place, "the desk")
    yield pool
    pool.close()


def used(pool: BookPool) -> Book:
    with pool.book() as book:
        assert book.rows("SELECT 1")
        return book


def test_the_next_user_has_the_same_connection_on_another_thread_too(pool: BookPool) -> None:
    first, found = used(pool), []
    thread = threading.Thread(target=lambda: found.append(used(pool)))
    thread.start()
    thread.join()
    assert found == [first] == [used(pool)]


def test_two_at_once_have_two(pool: BookPool) -> None:
    with pool.book() as one, pool.book() as other:
        assert one is not other


def test_no_more_stay_open_than_may_be_idle(pool: BookPool) -> None:
    held = [pool.book() for _ in range(MOST_IDLE + 2)]
    books = [one.__enter__() for one in held]
    for one in held:
        one.__exit__(None, None, None)
    closed = 0
    for book in books:
        try:
            book.rows("SELECT 1")
        except sqlite3.ProgrammingError:
            closed += 1
    assert closed == 2


def test_what_is_refused_inside_costs_no_connection_and_one_left_in_a_transaction_is_closed(pool: BookPool) -> None:
    first = used(pool)
    with pytest.raises(UsageFault), pool.book():
        raise UsageFault(Fault("x", "is refused"))
    assert used(pool) is first
    with pool.book() as book:
        book.connection.execute("BEGIN IMMEDIATE")
    assert used(pool) is not first


def test_another_file_in_its_place_is_opened(pool: BookPool, place: Path) -> None:
    with pool.book() as book:
        add_client(book, "M", RAW)
    place.rename(place.with_name("old.db"))
    with pool.book() as book:
        assert clients(book) == ()


@pytest.mark.skipif(os.name != "posix", reason="permissions are told by POSIX modes")
def test_a_file_that_others_may_read_now_is_refused(pool: BookPool, place: Path) -> None:
    used(pool)
    place.chmod(0o644)
    with pytest.raises(SetwrightError, match="chmod 600"):
        used(pool)


def test_a_book_that_a_newer_program_migrated_meanwhile_is_refused(pool: BookPool, place: Path) -> None:
    used(pool)
    with open_book(place) as newer:
        newer.connection.execute(f"PRAGMA user_version = {len(steps()) + 1}")
    with pytest.raises(SetwrightError, match="newer setwright"):
        used(pool)


def test_nothing_of_an_erased_client_is_left_in_the_file_while_others_hold_it_open(pool: BookPool, place: Path) -> None:
    with pool.book() as one, pool.book() as other:
        add_client(one, "UNMISTAKABLE", RAW)
        assert clients(other)
    with pool.book() as book:
        erase(book, client_of(book, "UNMISTAKABLE"))
    for path in place.parent.iterdir():
        assert b"UNMISTAKABLE" not in path.read_bytes(), path.name


def test_a_book_that_cannot_be_read_any_more_is_opened_anew(pool: BookPool, monkeypatch: pytest.MonkeyPatch) -> None:
    """`open_book` says in words what is amiss; SQLite's own error reached the page as a defect before."""

    def damaged(connection: sqlite3.Connection) -> int:
        raise sqlite3.DatabaseError("file is not a database")

    first = used(pool)
    monkeypatch.setattr("setwright.solver.book.pool.version_of", damaged)
    assert used(pool) is not first
    with pytest.raises(sqlite3.ProgrammingError, match="closed"):
        first.rows("SELECT 1")


def test_a_book_that_was_in_use_when_the_pool_closed_is_closed_when_it_is_handed_back(pool: BookPool) -> None:
    with pool.book() as book:
        pool.close()
    with pytest.raises(sqlite3.ProgrammingError, match="closed"):
        book.rows("SELECT 1")
